package club.emberwell.access;

import club.emberwell.access.problem.Errors;
import club.emberwell.access.problem.ProblemKind;
import club.emberwell.access.traffic.OpenRequests;
import club.emberwell.member.session.NetworkWords;
import club.emberwell.member.session.Sessions.Holder;
import io.quarkus.vertx.http.runtime.filters.Filters;
import io.quarkus.vertx.http.runtime.security.QuarkusHttpUser;
import io.vertx.core.Context;
import io.vertx.core.http.impl.HttpServerRequestInternal;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.time.Duration;
import java.time.Instant;
import java.util.EnumSet;
import java.util.Set;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jboss.logging.Logger;

/**
 * One line of the log for whoever asks for what is not theirs, or runs into one of the guards: what
 * was refused, where and to whom, by the account's id and never by what was sent. Who only has to
 * sign in is no such, and a wrong password is told by {@code SignIns}.
 */
@ApplicationScoped
class RefusalLog {
  private static final Logger LOG = Logger.getLogger("emberwell.refused");

  /** Outside the headers, so that it is there whoever answers. */
  private static final int FIRST = 1050;

  private static final Set<ProblemKind> TOLD =
      EnumSet.of(
          // asked for more than they may
          ProblemKind.TOKEN_UNKNOWN,
          ProblemKind.CONFIRMATION_REQUIRED,
          ProblemKind.SCOPE_MISSING,
          ProblemKind.ROLE_MISSING,
          ProblemKind.NOT_YOURS,
          ProblemKind.YOUR_OWN,
          ProblemKind.ACCOUNT_CLOSED,
          // sent what nobody sends by chance
          ProblemKind.FOREIGN_FORM,
          ProblemKind.INVALID_REQUEST,
          ProblemKind.UNKNOWN_FIELD,
          ProblemKind.PICTURE_UNREADABLE,
          // asked for more than is good
          ProblemKind.TOO_LARGE,
          ProblemKind.TOO_SLOW,
          ProblemKind.TOO_MANY_TRIES,
          ProblemKind.TOO_FAST,
          ProblemKind.CROWDED);

  private final TrustedProxies proxies;
  private final RefusalPace pace;

  RefusalLog(TrustedProxies proxies, @ConfigProperty(name = "emberwell.log.refusals") int aMinute) {
    this.proxies = proxies;
    this.pace = new RefusalPace(aMinute, Duration.ofMinutes(1));
  }

  void register(@Observes Filters filters) {
    filters.register(this::listen, FIRST);
  }

  private void listen(RoutingContext routing) {
    routing.addHeadersEndHandler(end -> tell(routing));
    routing.next();
  }

  private void tell(RoutingContext routing) {
    ProblemKind kind = Errors.kind(routing);
    if (kind != null && TOLD.contains(kind)) {
      pace.tell(kind, Instant.now()).ifPresent(leftOut -> tell(routing, kind, leftOut));
    }
  }

  private void tell(RoutingContext routing, ProblemKind kind, long leftOut) {
    LOG.infof(
        "event=refused kind=%s method=%s route=%s member=%s network=%s%s",
        kind.code(),
        routing.request().method(),
        route(routing),
        member(routing),
        NetworkWords.of(ClientAddress.prefix(proxies.sender(routing.request()))),
        leftOut == 0 ? "" : " left-out-before=" + leftOut);
  }

  /** By its template: names and secrets may stand in an address. */
  private static String route(RoutingContext routing) {
    Context context = ((HttpServerRequestInternal) routing.request()).context();
    String template = context.getLocal(OpenRequests.ROUTE);
    return template == null ? "-" : template;
  }

  private static String member(RoutingContext routing) {
    return routing.user() instanceof QuarkusHttpUser user
            && user.getSecurityIdentity().getAttribute(CredentialProvider.HOLDER)
                instanceof Holder h
        ? h.member().id().toString()
        : "stranger";
  }
}
