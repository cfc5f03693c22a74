package club.emberwell.access;

import io.vertx.ext.web.RoutingContext;
import java.util.List;
import java.util.Set;

/** Which requests are for programs, which for people, which for nobody in particular. */
public final class ApiPaths {
  public static final String BASE = "/api/v1";
  private static final String API = "/api/";
  private static final String OPERATORS = "/q/";
  private static final List<String> ASSETS = List.of("/assets/", "/webjars/", OPERATORS);

  /**
   * First words of what is about one member or the desk, or opened by a secret: no browser keeps
   * it. What a workshop needs without a connection (bench, grids, forms, job cards, also those that
   * a link opens) is not among them.
   */
  private static final Set<String> PERSONAL =
      Set.of(
          "me",
          "desk",
          "inbox",
          "watches",
          "flags",
          "sign-in",
          "sign-up",
          "first-owner",
          "invitation",
          "reset",
          "confirm",
          "unsubscribe",
          // the API's
          "tokens",
          "invitations",
          "requests",
          "webhooks");

  private ApiPaths() {}

  /** Decided on the path that is routed, so that no spelling slips past. */
  static boolean isApi(RoutingContext request) {
    return isApi(path(request));
  }

  /** The same of a path as it is routed. */
  public static boolean isApi(String path) {
    return path.startsWith(API);
  }

  /** Metrics and health, which programs ask with a token and owners in a browser. */
  static boolean isForOperators(RoutingContext request) {
    return path(request).startsWith(OPERATORS);
  }

  /** As it is routed; as it was sent where that cannot be read. */
  static String path(RoutingContext request) {
    try {
      return request.normalizedPath();
    } catch (IllegalArgumentException e) {
      String sent = request.request().path();
      return sent == null ? "/" : sent;
    }
  }

  /** Whether a browser has to forget the answer as soon as it is shown. */
  static boolean isPersonal(RoutingContext request) {
    String path = path(request);
    String[] words =
        (path.startsWith(BASE + "/") ? path.substring(BASE.length()) : path).split("/");
    return words.length > 1 && PERSONAL.contains(words[1]);
  }

  /** Files and probes that are the same for everybody. */
  static boolean isAsset(RoutingContext request) {
    String path = path(request);
    return ASSETS.stream().anyMatch(path::startsWith);
  }
}
