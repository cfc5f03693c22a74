package club.emberwell.access;

import club.emberwell.member.club.ClubOptions;
import io.vertx.core.MultiMap;
import io.vertx.core.http.HttpMethod;
import io.vertx.core.http.HttpServerRequest;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;

/**
 * Lets pages of other sites read what any stranger may read, where the club reads in public. An own
 * rule instead of quarkus.http.cors, because owners decide about it while the server runs.
 *
 * <p>Never with cookies or tokens: {@code *} forbids browsers to send the former, and Authorization
 * is not among the headers another site may send. So a site never acts as a member; and where only
 * members read, other sites read nothing. Programs outside a browser need none of this.
 */
@ApplicationScoped
class CrossOrigin {
  private static final List<String> READABLE =
      List.of(ApiPaths.BASE + "/", "/feeds/", "/data/", "/problems/");
  private static final String SECONDS = "86400";

  private final ClubOptions club;

  CrossOrigin(ClubOptions club) {
    this.club = club;
  }

  /** Puts the headers on an answer; true where other sites may read it. */
  boolean mark(RoutingContext routing, MultiMap headers) {
    HttpServerRequest request = routing.request();
    HttpMethod method = request.method();
    boolean asks = method.equals(HttpMethod.OPTIONS);
    boolean reads = method.equals(HttpMethod.GET) || method.equals(HttpMethod.HEAD);
    if (!asks && !reads || !readable(ApiPaths.path(routing))) {
      return false;
    }
    headers.set("Access-Control-Allow-Origin", "*");
    headers.set("Access-Control-Expose-Headers", "ETag, Location, Link, Retry-After");
    if (asks && request.getHeader("Access-Control-Request-Method") != null) {
      headers.set("Access-Control-Allow-Methods", "GET, HEAD");
      headers.set("Access-Control-Allow-Headers", "Accept, If-None-Match, If-Modified-Since");
      headers.set("Access-Control-Max-Age", SECONDS);
    }
    return true;
  }

  private boolean readable(String path) {
    return READABLE.stream().anyMatch(path::startsWith) && club.readingPublic();
  }
}
