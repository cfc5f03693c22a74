package club.emberwell.access;

import io.quarkus.vertx.http.runtime.filters.Filters;
import io.vertx.core.MultiMap;
import io.vertx.core.http.HttpHeaders;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.util.Map;

/**
 * Puts the same guards on every answer, files and errors too. A resource can set a stricter one.
 */
@ApplicationScoped
public class SecurityHeaders {
  static final String POLICY =
      "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:;"
          + " connect-src 'self'; form-action 'self'; base-uri 'none'; object-src 'none';"
          + " frame-ancestors 'none'; manifest-src 'self'; worker-src 'self'";

  private static final String RESOURCE_POLICY = "Cross-Origin-Resource-Policy";

  /** What no answer goes without. */
  public static final Map<String, String> ALWAYS =
      Map.of(
          "Content-Security-Policy",
          POLICY,
          "X-Content-Type-Options",
          "nosniff",
          "Referrer-Policy",
          "same-origin",
          "Permissions-Policy",
          "camera=(self), geolocation=(), microphone=(), payment=(), usb=(), serial=()",
          "Cross-Origin-Opener-Policy",
          "same-origin",
          RESOURCE_POLICY,
          "same-origin");

  /** Before every other filter and route. */
  private static final int FIRST = 1000;

  private final PublicUrl url;
  private final CrossOrigin others;

  SecurityHeaders(PublicUrl url, CrossOrigin others) {
    this.url = url;
    this.others = others;
  }

  void register(@Observes Filters filters) {
    filters.register(this::guard, FIRST);
  }

  private void guard(RoutingContext request) {
    request.addHeadersEndHandler(
        end -> {
          MultiMap headers = request.response().headers();
          vary(request, headers);
          if (others.mark(request, headers)) {
            addIfAbsent(headers, RESOURCE_POLICY, "cross-origin");
          }
          ALWAYS.forEach((name, value) -> addIfAbsent(headers, name, value));
          if (url.secure()) {
            addIfAbsent(headers, "Strict-Transport-Security", "max-age=31536000");
          }
          if (!ApiPaths.isAsset(request)) {
            addIfAbsent(
                headers,
                "Cache-Control",
                ApiPaths.isPersonal(request) ? "no-store" : "private, no-cache");
          }
        });
    request.next();
  }

  /** What else an answer depends on: how it is packed, and who asks. */
  private static void vary(RoutingContext request, MultiMap headers) {
    String who =
        ApiPaths.isAsset(request) ? "" : ApiPaths.isApi(request) ? ", Authorization" : ", Cookie";
    String own = headers.get(HttpHeaders.VARY);
    headers.set(HttpHeaders.VARY, (own == null ? "" : own + ", ") + "Accept-Encoding" + who);
  }

  private static void addIfAbsent(MultiMap headers, String name, String value) {
    if (!headers.contains(name)) {
      headers.set(name, value);
    }
  }
}
