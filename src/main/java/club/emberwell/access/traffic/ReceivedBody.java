package club.emberwell.access.traffic;

import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.container.ContainerRequestContext;
import java.io.IOException;
import org.jboss.resteasy.reactive.server.ServerRequestFilter;

/** Hands resources the body that has arrived, in place of the connection. */
@ApplicationScoped
class ReceivedBody {
  private static final int BEFORE_ALL_OTHERS = 0;

  private final RoutingContext request;

  ReceivedBody(RoutingContext request) {
    this.request = request;
  }

  @ServerRequestFilter(preMatching = true, priority = BEFORE_ALL_OTHERS)
  void hand(ContainerRequestContext context) throws IOException {
    SentBody body = request.get(SentBodies.WHOLE);
    if (body != null) {
      context.setEntityStream(body.open());
    }
  }
}
