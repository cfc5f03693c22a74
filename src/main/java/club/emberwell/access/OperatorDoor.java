package club.emberwell.access;

import club.emberwell.access.problem.BareAnswers;
import club.emberwell.access.problem.Problems;
import club.emberwell.member.Role;
import io.quarkus.security.identity.SecurityIdentity;
import io.quarkus.vertx.http.runtime.filters.Filters;
import io.quarkus.vertx.http.runtime.security.QuarkusHttpUser;
import io.smallrye.health.SmallRyeHealth;
import io.smallrye.health.SmallRyeHealthReporter;
import io.smallrye.mutiny.Uni;
import io.vertx.core.http.HttpHeaders;
import io.vertx.core.http.HttpServerRequest;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.List;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/**
 * Keeps what only operators need to know from everybody else: metrics, and what each check of
 * health says. That the server is up and ready is told to whoever asks, as load balancers do.
 */
@ApplicationScoped
class OperatorDoor {
  /** Behind the look at who asks. */
  private static final int AFTER_CREDENTIALS = 90;

  private static final String METRICS = "/q/metrics";
  private static final String HEALTH = "/q/health";
  private static final int UNAVAILABLE = 503;

  /** What proxies add; with one of them loopback is the proxy and not who asks. */
  private static final List<String> FORWARDED =
      List.of(TrustedProxies.HEADER, "Forwarded", "X-Real-IP", "Via");

  private final boolean open;
  private final BareAnswers answers;
  private final SmallRyeHealthReporter health;

  OperatorDoor(
      @ConfigProperty(name = "emberwell.metrics.open") boolean open,
      BareAnswers answers,
      SmallRyeHealthReporter health) {
    this.open = open;
    this.answers = answers;
    this.health = health;
  }

  void register(@Observes Filters filters) {
    filters.register(this::check, AFTER_CREDENTIALS);
  }

  private void check(RoutingContext routing) {
    String path = ApiPaths.path(routing);
    boolean metrics = path.startsWith(METRICS);
    if (!metrics && !path.startsWith(HEALTH) || open || here(routing.request())) {
      routing.next();
      return;
    }
    SecurityIdentity asks = identity(routing);
    if (asks != null && asks.hasRole(Role.OWN)) {
      routing.next();
    } else if (!metrics) {
      tellStatus(routing, path);
    } else if (asks == null || asks.isAnonymous()) {
      answers.answer(routing, Problems.unauthorized(CredentialMechanism.refused(routing)));
    } else {
      answers.answer(routing, Problems.forbidden());
    }
  }

  private static SecurityIdentity identity(RoutingContext routing) {
    return routing.user() instanceof QuarkusHttpUser user ? user.getSecurityIdentity() : null;
  }

  /** Whether it was asked on this very machine, and by no proxy. */
  private static boolean here(HttpServerRequest request) {
    if (FORWARDED.stream().anyMatch(request.headers()::contains)) {
      return false;
    }
    try {
      // literal, so nothing is looked up
      String peer = request.connection().remoteAddress().hostAddress();
      return InetAddress.getByName(peer).isLoopbackAddress();
    } catch (UnknownHostException e) {
      return false;
    }
  }

  private void tellStatus(RoutingContext routing, String path) {
    asked(path)
        .subscribe()
        .with(
            found -> {
              boolean down = found.isDown();
              routing.response().setStatusCode(down ? UNAVAILABLE : 200);
              routing
                  .response()
                  .putHeader(HttpHeaders.CONTENT_TYPE, "application/json; charset=UTF-8");
              routing.response().putHeader(HttpHeaders.CACHE_CONTROL, "no-store");
              routing.response().end("{\"status\": \"%s\"}".formatted(down ? "DOWN" : "UP"));
            },
            routing::fail);
  }

  private Uni<SmallRyeHealth> asked(String path) {
    if (path.endsWith("/live")) {
      return health.getLivenessAsync();
    }
    if (path.endsWith("/started")) {
      return health.getStartupAsync();
    }
    return path.endsWith("/ready") ? health.getReadinessAsync() : health.getHealthAsync();
  }
}
