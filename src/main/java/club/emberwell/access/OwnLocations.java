package club.emberwell.access;

import io.vertx.core.http.HttpServerRequest;
import io.vertx.core.net.HostAndPort;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.container.ContainerResponseContext;
import jakarta.ws.rs.core.HttpHeaders;
import java.net.URI;
import org.jboss.resteasy.reactive.server.ServerResponseFilter;

/**
 * Says where things of this server are. Left to the framework a {@code Location} names the host
 * that the request named, which behind a proxy is one that nobody else knows.
 */
@ApplicationScoped
class OwnLocations {
  private static final int REDIRECTS = 3;
  private static final int HUNDRED = 100;

  private final PublicUrl url;

  OwnLocations(PublicUrl url) {
    this.url = url;
  }

  @ServerResponseFilter
  void name(ContainerResponseContext response, HttpServerRequest request) {
    Object said = response.getHeaders().getFirst(HttpHeaders.LOCATION);
    if (said == null) {
      return;
    }
    URI location = URI.create(said.toString());
    if (location.isAbsolute() && !sameServer(location, request)) {
      return;
    }
    String path =
        location.getRawPath()
            + (location.getRawQuery() == null ? "" : "?" + location.getRawQuery())
            + (location.getRawFragment() == null ? "" : "#" + location.getRawFragment());
    // browsers follow a path (RFC 9110, section 10.2.2) from the very address they used
    boolean redirect = response.getStatus() / HUNDRED == REDIRECTS;
    response.getHeaders().putSingle(HttpHeaders.LOCATION, redirect ? path : url.of(path));
  }

  private static boolean sameServer(URI location, HttpServerRequest request) {
    HostAndPort called = request.authority();
    return called != null && called.toString().equals(location.getAuthority());
  }
}
