package club.emberwell.access.traffic;

import club.emberwell.access.LongestBody;
import club.emberwell.access.TrustedProxies;
import club.emberwell.access.problem.BareAnswers;
import club.emberwell.access.problem.Problems;
import io.quarkus.vertx.http.runtime.filters.Filters;
import io.vertx.core.Future;
import io.vertx.core.http.HttpHeaders;
import io.vertx.core.http.HttpServerRequest;
import io.vertx.core.http.HttpVersion;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.nio.file.Path;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/**
 * Reads every body on the event loop, to its end, before a thread is asked to do anything with it,
 * and turns back those that are longer than their address takes: left to the framework a thread
 * waits for each byte of it.
 */
@ApplicationScoped
class SentBodies {
  static final String WHOLE = "emberwell.sent-body";

  /** Behind the look at who asks and the framework's limit of bytes, before all routes. */
  private static final int LAST_OF_FILTERS = 1;

  private final TrafficLimits limits;
  private final LongestBody longest;
  private final TrustedProxies proxies;
  private final BareAnswers answers;
  private final Path folder;
  private final PerAddress halfSent;

  SentBodies(
      TrafficLimits limits,
      LongestBody longest,
      TrustedProxies proxies,
      BareAnswers answers,
      @ConfigProperty(name = "quarkus.http.body.uploads-directory") Path folder) {
    this.limits = limits;
    this.longest = longest;
    this.proxies = proxies;
    this.answers = answers;
    this.folder = folder;
    this.halfSent = new PerAddress(limits.halfSentOfOne(), limits.halfSentOfAll());
  }

  void register(@Observes Filters filters) {
    filters.register(this::receive, LAST_OF_FILTERS);
  }

  private void receive(RoutingContext routing) {
    HttpServerRequest request = routing.request();
    long length = length(request);
    if (length == 0) {
      routing.next();
      return;
    }
    long most = longest.of(routing);
    if (length > most) {
      answers.refuse(routing, Problems.tooLarge(most));
      return;
    }
    String sender = proxies.network(request);
    if (!halfSent.enter(sender)) {
      answers.refuse(routing, Problems.crowded());
      return;
    }
    boolean small = length > 0 && length <= limits.bodyInMemory();
    new BodyReceipt(
            routing,
            limits,
            most,
            () -> halfSent.leave(sender),
            problem -> answers.refuse(routing, problem))
        .begin(
            small
                ? Future.succeededFuture(BodyStore.inMemory())
                : BodyStore.inFile(routing.vertx(), folder));
  }

  /** The bytes that will come; below zero where it is not said. */
  private static long length(HttpServerRequest request) {
    String length = request.getHeader(HttpHeaders.CONTENT_LENGTH);
    if (length != null) {
      return Long.parseLong(length);
    }
    return request.getHeader(HttpHeaders.TRANSFER_ENCODING) != null
            || !request.isEnded() && request.version() == HttpVersion.HTTP_2
        ? -1
        : 0;
  }
}
