package club.emberwell.access;

import club.emberwell.access.problem.Problems;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.HttpMethod;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.core.Response;
import java.util.Set;
import org.jboss.resteasy.reactive.server.ServerRequestFilter;

/**
 * Answers OPTIONS with the methods of that very address, for API and pages alike; what a browser
 * asks before it reads from another site is answered on the same way, see {@link CrossOrigin}.
 */
@ApplicationScoped
class OptionsAnswers {
  private final AllowedMethods allowed;
  private final RoutingContext request;

  OptionsAnswers(AllowedMethods allowed, RoutingContext request) {
    this.allowed = allowed;
    this.request = request;
  }

  @ServerRequestFilter(preMatching = true)
  Response answer(ContainerRequestContext context) {
    if (!context.getMethod().equals(HttpMethod.OPTIONS)) {
      return null;
    }
    Set<String> methods = allowed.of(request.normalizedPath());
    if (methods.isEmpty()) {
      throw Problems.notFound().exception();
    }
    return Response.noContent().allow(methods).build();
  }
}
