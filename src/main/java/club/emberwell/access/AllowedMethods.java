package club.emberwell.access;

import io.quarkus.resteasy.reactive.server.runtime.ResteasyReactiveRecorder;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.HttpMethod;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.jboss.resteasy.reactive.server.core.Deployment;
import org.jboss.resteasy.reactive.server.handlers.ClassRoutingHandler;
import org.jboss.resteasy.reactive.server.handlers.RestInitialHandler.InitialMatch;
import org.jboss.resteasy.reactive.server.mapping.RequestMapper;
import org.jboss.resteasy.reactive.server.mapping.RequestMapper.RequestMatch;
import org.jboss.resteasy.reactive.server.mapping.RuntimeResource;
import org.jboss.resteasy.reactive.server.spi.ServerRestHandler;

/**
 * Which methods an address takes (RFC 9110, section 10.2.1), asked of the same tables by which
 * requests are routed. Left to itself the router names no method after a 405, and for OPTIONS those
 * of a whole class.
 */
@ApplicationScoped
class AllowedMethods {
  private RequestMapper<InitialMatch> classes;

  /**
   * The methods in order of their names; none where there is nothing at this address.
   *
   * @param path as routed, e.g. {@code /api/v1/me}
   */
  Set<String> of(String path) {
    Set<String> found = new TreeSet<>();
    RequestMapper<InitialMatch> all = classes();
    for (RequestMatch<InitialMatch> at = all.map(path);
        at != null && found.isEmpty();
        at = all.continueMatching(path, at)) {
      for (ServerRestHandler handler : at.value.handlers) {
        if (handler instanceof ClassRoutingHandler routing) {
          add(routing.getMappers(), at.remaining, found);
        }
      }
    }
    if (found.contains(HttpMethod.GET)) {
      found.add(HttpMethod.HEAD);
    }
    if (!found.isEmpty()) {
      found.add(HttpMethod.OPTIONS);
    }
    return found;
  }

  private static void add(
      Map<String, RequestMapper<RuntimeResource>> routes, String remaining, Set<String> found) {
    String path = remaining.isEmpty() ? "/" : remaining;
    routes.forEach(
        (method, mapper) -> {
          RequestMatch<RuntimeResource> match = method == null ? null : mapper.map(path);
          if (match != null && (match.remaining.isEmpty() || match.remaining.equals("/"))) {
            found.add(method);
          }
        });
  }

  private synchronized RequestMapper<InitialMatch> classes() {
    if (classes == null) {
      Deployment routes = ResteasyReactiveRecorder.getCurrentDeployment();
      classes = new RequestMapper<>(routes.getClassMappers());
    }
    return classes;
  }
}
