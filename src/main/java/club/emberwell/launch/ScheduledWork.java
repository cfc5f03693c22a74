package club.emberwell.launch;

import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.scheduler.spi.JobInstrumenter;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.interceptor.Interceptor;
import java.time.Duration;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.Phaser;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.jboss.logging.Logger;

/**
 * What runs by the clock: when the server stops nothing begins any more, and what was begun may
 * finish while database and indexes still answer.
 */
@ApplicationScoped
public class ScheduledWork implements JobInstrumenter {
  /** Most work takes less than a second; what takes minutes is begun again at the next start. */
  static final Duration GRACE = Duration.ofSeconds(5);

  private static final Logger LOG = Logger.getLogger(ScheduledWork.class);

  /** The first party is the server itself. */
  private final Phaser running = new Phaser(1);

  private volatile boolean stopping;

  @Override
  public CompletionStage<Void> instrument(JobInstrumentationContext job) {
    running.register();
    if (stopping) {
      running.arriveAndDeregister();
      return CompletableFuture.completedStage(null);
    }
    try {
      return job.executeJob()
          .handle((done, failure) -> failure)
          .thenCompose(
              failure ->
                  failure == null
                      ? CompletableFuture.completedStage(null)
                      : broken(job.getSpanName(), failure))
          .whenComplete((done, failure) -> running.arriveAndDeregister());
    } catch (RuntimeException e) {
      running.arriveAndDeregister();
      return broken(job.getSpanName(), e);
    }
  }

  private CompletionStage<Void> broken(String name, Throwable failure) {
    if (!stopping) {
      return CompletableFuture.failedStage(failure);
    }
    LOG.debugf(failure, "%s broke off with the server", name);
    return CompletableFuture.completedStage(null);
  }

  /** Before everything else: what it needs is still there. */
  void stop(@Observes @Priority(Interceptor.Priority.PLATFORM_BEFORE) ShutdownEvent told) {
    finish(GRACE);
  }

  void finish(Duration patience) {
    stopping = true;
    int phase = running.arriveAndDeregister();
    try {
      running.awaitAdvanceInterruptibly(phase, patience.toMillis(), TimeUnit.MILLISECONDS);
    } catch (TimeoutException e) {
      LOG.infof(
          "%d jobs are broken off; they begin again at the next start",
          running.getUnarrivedParties());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
