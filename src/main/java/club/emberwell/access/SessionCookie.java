package club.emberwell.access;

import club.emberwell.member.session.Sessions.SignedIn;
import io.vertx.core.http.Cookie;
import io.vertx.core.http.CookieSameSite;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;

/**
 * The cookie of a signed-in browser: {@code __Host-emberwell}, which browsers send back only over
 * HTTPS to this very host, or plain {@code emberwell} for HTTP on the own machine.
 */
@ApplicationScoped
public class SessionCookie {
  private static final String PLAIN_NAME = "emberwell";
  private static final String HOST_PREFIX = "__Host-";

  private final PublicUrl url;

  SessionCookie(PublicUrl url) {
    this.url = url;
  }

  /** Hands the browser its secret. */
  public void set(RoutingContext request, SignedIn session) {
    long seconds = Duration.between(Instant.now(), session.expires()).toSeconds();
    request.response().addCookie(cookie(request, PLAIN_NAME, session.secret()).setMaxAge(seconds));
  }

  /** Tells the browser to forget its secret. */
  public void clear(RoutingContext request) {
    request.response().addCookie(cookie(request, PLAIN_NAME, "").setMaxAge(0));
  }

  /** The secret the browser sent, if any. */
  public Optional<String> read(RoutingContext request) {
    return read(request, PLAIN_NAME);
  }

  /** Hands the browser something else to bring back, for this host only. */
  public void set(RoutingContext request, String plainName, String value, Duration life) {
    request.response().addCookie(cookie(request, plainName, value).setMaxAge(life.toSeconds()));
  }

  /** Tells the browser to forget it. */
  public void clear(RoutingContext request, String plainName) {
    request.response().addCookie(cookie(request, plainName, "").setMaxAge(0));
  }

  /** What the browser brought back, if anything. */
  public Optional<String> read(RoutingContext request, String plainName) {
    return Optional.ofNullable(request.request().getCookie(name(request, plainName)))
        .map(Cookie::getValue)
        .filter(value -> !value.isEmpty());
  }

  /** A cookie for this host only that no script can read. */
  Cookie cookie(RoutingContext request, String plainName, String value) {
    return Cookie.cookie(name(request, plainName), value)
        .setPath("/")
        .setHttpOnly(true)
        .setSameSite(CookieSameSite.LAX)
        .setSecure(!url.plainLoopback(request.request()));
  }

  private String name(RoutingContext request, String plainName) {
    return url.plainLoopback(request.request()) ? plainName : HOST_PREFIX + plainName;
  }
}
