package club.emberwell.keep;

import io.micrometer.core.instrument.Gauge;
import io.micrometer.core.instrument.MeterRegistry;
import io.quarkus.runtime.StartupEvent;
import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.time.Instant;
import java.util.Optional;
import org.eclipse.microprofile.health.HealthCheck;
import org.eclipse.microprofile.health.HealthCheckResponse;
import org.eclipse.microprofile.health.HealthCheckResponseBuilder;
import org.eclipse.microprofile.health.Readiness;

/** What an operator sees of backups. A server without one is as ready as any other. */
@Readiness
@ApplicationScoped
class BackupWatch implements HealthCheck {
  private final Backups backups;
  private final MeterRegistry meters;
  private volatile BackupOverview seen;

  BackupWatch(Backups backups, MeterRegistry meters) {
    this.backups = backups;
    this.meters = meters;
  }

  void register(@Observes StartupEvent started) {
    Gauge.builder("emberwell.backup.last.success.timestamp", this, BackupWatch::seconds)
        .baseUnit("seconds")
        .description("When the newest good backup was made, by whichever node")
        .register(meters);
    look();
  }

  /** Kept, so that no question about health waits for the database. */
  @Scheduled(every = "1m", concurrentExecution = Scheduled.ConcurrentExecution.SKIP)
  void look() {
    seen = backups.overview();
  }

  private Optional<Instant> madeAt() {
    return seen.newest().map(one -> one.file().madeAt());
  }

  private double seconds() {
    return madeAt().map(at -> at.toEpochMilli() / 1000.0).orElse(Double.NaN);
  }

  @Override
  public HealthCheckResponse call() {
    HealthCheckResponseBuilder answer =
        HealthCheckResponse.named("backups")
            .withData("newest", madeAt().map(Instant::toString).orElse("none yet"));
    seen.caution(Instant.now()).ifPresent(what -> answer.withData("caution", what));
    seen.failed().ifPresent(last -> answer.withData("last failed", last.failure()));
    return answer.up().build();
  }
}
