package club.emberwell.search.index;

import io.micrometer.core.instrument.Gauge;
import io.micrometer.core.instrument.MeterRegistry;
import io.quarkus.runtime.StartupEvent;
import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.util.function.ToDoubleFunction;
import org.eclipse.microprofile.health.HealthCheck;
import org.eclipse.microprofile.health.HealthCheckResponse;
import org.eclipse.microprofile.health.Readiness;

/**
 * What an operator sees of the index. It counts as ready once it answers, however far behind: a
 * late index still serves.
 */
@Readiness
@ApplicationScoped
class IndexWatch implements HealthCheck {
  private final SearchIndex index;
  private final MeterRegistry meters;

  IndexWatch(SearchIndex index, MeterRegistry meters) {
    this.index = index;
    this.meters = meters;
  }

  void register(@Observes StartupEvent event) {
    gauge("emberwell.index.lag", "Seconds since every known change was in it", s -> s.lagSeconds());
    gauge("emberwell.index.trials", "Trials that can be found", s -> s.trials());
    gauge("emberwell.index.rebuilds", "Times it was built since the start", s -> s.rebuilds());
    gauge("emberwell.index.drifts", "Times it differed from the database", s -> s.drifts());
  }

  private void gauge(String name, String meaning, ToDoubleFunction<IndexStatus> value) {
    Gauge.builder(name, index, i -> value.applyAsDouble(i.status()))
        .description(meaning)
        .register(meters);
  }

  @Scheduled(
      cron = "{emberwell.index.compare}",
      concurrentExecution = Scheduled.ConcurrentExecution.SKIP)
  void compare() {
    if (index.status().ready()) {
      index.reconcile();
    }
  }

  @Override
  public HealthCheckResponse call() {
    IndexStatus status = index.status();
    return HealthCheckResponse.named("search index")
        .withData("trials", status.trials())
        .withData("lag seconds", Math.round(status.lagSeconds()))
        .withData("rebuilding", status.builds().running())
        .withData("built because", status.builds().why())
        .withData("next build in seconds", status.builds().pause().toSeconds())
        .status(status.ready())
        .build();
  }
}
