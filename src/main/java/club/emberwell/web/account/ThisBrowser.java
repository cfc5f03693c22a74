package club.emberwell.web.account;

import club.emberwell.access.ClientAddress;
import club.emberwell.access.SessionCookie;
import club.emberwell.member.session.Sessions;
import club.emberwell.member.session.Sessions.From;
import club.emberwell.member.session.Sessions.SignedIn;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.RequestScoped;
import jakarta.ws.rs.core.HttpHeaders;
import java.time.Duration;
import java.util.Optional;

/** The browser that asks: its session and where it is. */
@RequestScoped
class ThisBrowser {
  private final Sessions sessions;
  private final SessionCookie cookie;
  private final ClientAddress address;
  private final RoutingContext request;

  ThisBrowser(
      Sessions sessions, SessionCookie cookie, ClientAddress address, RoutingContext request) {
    this.sessions = sessions;
    this.cookie = cookie;
    this.address = address;
    this.request = request;
  }

  /** Where it is, as far as tries are counted. */
  String address() {
    return address.prefix();
  }

  /** What it calls itself, and where it is. */
  From from() {
    return new From(request.request().getHeader(HttpHeaders.USER_AGENT), address());
  }

  SignedIn signIn(String handle, String password) {
    SignedIn session = sessions.signIn(handle, password, from().agent(), address());
    begin(session);
    return session;
  }

  /** A sign-in never goes on with an older session of the same browser. */
  void begin(SignedIn session) {
    cookie.read(request).ifPresent(sessions::end);
    cookie.set(request, session);
  }

  void signOut() {
    cookie.read(request).ifPresent(secret -> sessions.signOut(secret, from()));
    forget();
  }

  /** Drops the cookie of a session that is over. */
  void forget() {
    cookie.clear(request);
  }

  Optional<String> read(String name) {
    return cookie.read(request, name);
  }

  void keep(String name, String value, Duration life) {
    cookie.set(request, name, value, life);
  }

  void drop(String name) {
    cookie.clear(request, name);
  }
}
