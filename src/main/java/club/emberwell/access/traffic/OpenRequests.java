package club.emberwell.access.traffic;

import club.emberwell.access.TrustedProxies;
import club.emberwell.access.problem.BareAnswers;
import club.emberwell.access.problem.Problems;
import io.quarkus.vertx.http.runtime.filters.Filters;
import io.smallrye.common.vertx.VertxContext;
import io.vertx.core.Context;
import io.vertx.core.Vertx;
import io.vertx.core.http.HttpServerRequest;
import io.vertx.core.http.impl.HttpServerRequestInternal;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.util.Set;

/** Leaves no address more of the threads than its share, however slowly it reads the answers. */
@ApplicationScoped
public class OpenRequests {
  /** Behind the headers of every answer, before it is looked at who asks. */
  private static final int EARLY = 900;

  /** First words of addresses that are files or probes; what follows is no name for a metric. */
  private static final Set<String> GROUPS = Set.of("/assets", "/webjars", "/q");

  /** Where the framework's metrics look for the template of a route. */
  public static final String ROUTE = "UrlPathTemplate";

  private static final String PROBES = "/q/";
  private static final String MARK = "emberwell.in-request";

  private final TrustedProxies proxies;
  private final BareAnswers answers;
  private final PerAddress open;

  OpenRequests(TrafficLimits limits, TrustedProxies proxies, BareAnswers answers) {
    this.proxies = proxies;
    this.answers = answers;
    this.open = new PerAddress(limits.requestsOfOne(), Integer.MAX_VALUE);
  }

  void register(@Observes Filters filters) {
    filters.register(this::count, EARLY);
  }

  /** Whether somebody outside waits for what this thread does. */
  public static boolean isInRequest() {
    Context context = Vertx.currentContext();
    return context != null
        && VertxContext.isDuplicatedContext(context)
        && context.getLocal(MARK) != null;
  }

  private void count(RoutingContext routing) {
    HttpServerRequest request = routing.request();
    Vertx.currentContext().putLocal(MARK, true);
    HeadDeadline.headIsThere(routing);
    countAs(request, routing.normalizedPath());
    if (routing.normalizedPath().startsWith(PROBES)) {
      routing.next();
      return;
    }
    String sender = proxies.network(request);
    if (!open.enter(sender)) {
      answers.refuse(routing, Problems.crowded());
      return;
    }
    routing.addEndHandler(answered -> open.leave(sender));
    routing.next();
  }

  /** The name by which metrics count what no resource answers; resources put their own there. */
  private static void countAs(HttpServerRequest request, String path) {
    int end = path.indexOf('/', 1);
    boolean grouped = GROUPS.contains(end < 0 ? path : path.substring(0, end));
    String name = grouped ? path.substring(0, end < 0 ? path.length() : end) : "/unrouted";
    ((HttpServerRequestInternal) request).context().putLocal(ROUTE, name);
  }
}
