package club.emberwell.access;

import io.vertx.ext.web.RoutingContext;
import java.util.List;

/** Which requests are for programs, which for people, which for nobody in particular. */
public final class ApiPaths {
  public static final String BASE = "/api/v1";
  private static final String API = "/api/";
  private static final List<String> ASSETS = List.of("/assets/", "/webjars/", "/q/");

  private ApiPaths() {}

  /** Decided on the path that is routed, so that no spelling slips past. */
  static boolean isApi(RoutingContext request) {
    return isApi(request.normalizedPath());
  }

  /** The same of a path as it is routed. */
  public static boolean isApi(String path) {
    return path.startsWith(API);
  }

  /** Files and probes that are the same for everybody. */
  static boolean isAsset(RoutingContext request) {
    String path = request.normalizedPath();
    return ASSETS.stream().anyMatch(path::startsWith);
  }
}
