package club.emberwell.access;

import io.vertx.core.http.HttpServerRequest;
import io.vertx.core.net.HostAndPort;
import jakarta.enterprise.context.ApplicationScoped;
import java.net.URI;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** The one address members use, and what follows from it. */
@ApplicationScoped
public class PublicUrl {
  private static final String HTTPS = "https";

  private final URI url;

  PublicUrl(@ConfigProperty(name = "emberwell.public-url") URI url) {
    this.url = url;
  }

  /** An absolute address for a path that starts with a slash. */
  public String of(String path) {
    return url + path;
  }

  boolean secure() {
    return HTTPS.equals(url.getScheme());
  }

  /** Whether cookies can go without {@code Secure}: plain HTTP on this very machine only. */
  boolean plainLoopback(HttpServerRequest request) {
    HostAndPort authority = request.authority();
    return !secure() && !request.isSSL() && authority != null && loopback(authority.host());
  }

  /** Whether an Origin header names this server, by its public address or as it was called. */
  boolean isOwnOrigin(String origin, HttpServerRequest request) {
    HostAndPort authority = request.authority();
    String called =
        authority == null ? null : (request.isSSL() ? HTTPS : "http") + "://" + authority;
    return origin.equals(origin(url)) || origin.equals(called);
  }

  private static String origin(URI url) {
    String port = url.getPort() < 0 ? "" : ":" + url.getPort();
    return url.getScheme() + "://" + url.getHost() + port;
  }

  private static boolean loopback(String host) {
    return host.equals("localhost")
        || host.equals("::1")
        || host.equals("[::1]")
        || host.matches("127(\\.\\d{1,3}){3}");
  }
}
