package club.emberwell.api.writes;

import club.emberwell.access.ApiPaths;
import club.emberwell.access.Etags;
import io.vertx.ext.web.RoutingContext;
import jakarta.ws.rs.Priorities;
import jakarta.ws.rs.container.ContainerResponseContext;
import jakarta.ws.rs.container.ResourceInfo;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import java.lang.annotation.Annotation;
import java.lang.reflect.Method;
import org.jboss.resteasy.reactive.server.ServerRequestFilter;
import org.jboss.resteasy.reactive.server.ServerResponseFilter;

/**
 * Holds each operation to what its annotations declare ({@link Keyed}, {@link IfMatch}, {@link
 * WithEtag}), since the API's description is made of them.
 */
class Declared {
  private static final String METHOD = "emberwell.method";

  /** After the roles, scopes and paces. */
  private static final int LAST = Priorities.USER + 1000;

  private final RoutingContext routing;
  private final KeyedWrites writes;

  Declared(RoutingContext routing, KeyedWrites writes) {
    this.routing = routing;
    this.writes = writes;
  }

  /** What is done without being declared is a fault of ours. */
  static void insist(RoutingContext routing, Class<? extends Annotation> trait) {
    Method method = routing.get(METHOD);
    if (!method.isAnnotationPresent(trait)) {
      throw new IllegalStateException(method + " needs @" + trait.getSimpleName());
    }
  }

  @ServerRequestFilter(priority = LAST)
  void check(ResourceInfo route) {
    Method method = route.getResourceMethod();
    routing.put(METHOD, method);
    if (method.isAnnotationPresent(Keyed.class)) {
      writes.key();
    }
    IfMatch condition = method.getAnnotation(IfMatch.class);
    if (condition != null && condition.required()) {
      Etags.required(routing);
    }
  }

  @ServerResponseFilter
  void compare(ContainerResponseContext answer, ResourceInfo route) {
    // what no method answers has no route
    Method method = route == null ? null : route.getResourceMethod();
    boolean done = answer.getStatusInfo().getFamily() == Response.Status.Family.SUCCESSFUL;
    if (method == null || !done || !ApiPaths.isApi(routing.normalizedPath())) {
      return;
    }
    // tests run with assertions; a club's answer is not held back for it
    assert answer.getHeaders().containsKey(HttpHeaders.ETAG)
            == method.isAnnotationPresent(WithEtag.class)
        : method + " answers an ETag without @WithEtag or the other way round";
  }
}
