package club.emberwell.access;

import club.emberwell.access.problem.Errors;
import io.quarkus.vertx.http.runtime.filters.Filters;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.util.UUID;
import java.util.regex.Pattern;
import org.jboss.logging.MDC;

/**
 * Gives each request a name by which it is found in the log: that of a trusted proxy, so that both
 * logs tell of it by the same, or one of our own.
 */
@ApplicationScoped
public class RequestIds {
  static final String HEADER = Errors.REQUEST_ID;

  /** The key in the log. */
  static final String LOGGED_AS = "request";

  private static final String KEY = "emberwell.request-id";

  /** Long enough to be told apart, and nothing that could forge a line of the log. */
  private static final Pattern WELL_FORMED = Pattern.compile("[A-Za-z0-9._-]{8,64}");

  /** Before whatever may answer or write into the log. */
  private static final int FIRST = 1100;

  private final TrustedProxies proxies;

  RequestIds(TrustedProxies proxies) {
    this.proxies = proxies;
  }

  void register(@Observes Filters filters) {
    filters.register(this::name, FIRST);
  }

  private void name(RoutingContext routing) {
    String id = given(routing);
    routing.put(KEY, id);
    routing.response().putHeader(HEADER, id);
    MDC.put(LOGGED_AS, id);
    routing.next();
  }

  private String given(RoutingContext routing) {
    String sent = routing.request().getHeader(HEADER);
    boolean believed =
        sent != null
            && WELL_FORMED.matcher(sent).matches()
            && proxies.trusts(routing.request().connection().remoteAddress().hostAddress());
    return believed ? sent : UUID.randomUUID().toString();
  }

  /** The name of a request. */
  public static String of(RoutingContext routing) {
    return routing.get(KEY);
  }
}
