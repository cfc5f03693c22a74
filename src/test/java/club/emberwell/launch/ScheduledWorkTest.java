package club.emberwell.launch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.scheduler.spi.JobInstrumenter.JobInstrumentationContext;
import java.time.Duration;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

class ScheduledWorkTest {
  private final ScheduledWork work = new ScheduledWork();

  private CompletableFuture<Void> run(CompletionStage<Void> job) {
    return work.instrument(
            new JobInstrumentationContext() {
              @Override
              public CompletionStage<Void> executeJob() {
                return job;
              }

              @Override
              public String getSpanName() {
                return "a job";
              }
            })
        .toCompletableFuture();
  }

  @Test
  void whatWasBegunIsWaitedForAndNothingBeginsAfterwards() {
    CompletableFuture<Void> job = new CompletableFuture<>();
    run(job);
    AtomicInteger ended = new AtomicInteger();
    CompletableFuture<Void> stopped =
        CompletableFuture.runAsync(() -> work.finish(Duration.ofMinutes(1)))
            .thenRun(ended::incrementAndGet);
    assertFalse(stopped.isDone());
    job.complete(null);
    stopped.join();
    assertEquals(1, ended.get());
    CompletableFuture<Void> late = new CompletableFuture<>();
    assertTrue(run(late).isDone(), "a job was begun after the server stopped");
  }

  @Test
  void aServerWithoutWorkStopsAtOnce() {
    run(CompletableFuture.completedFuture(null));
    work.finish(Duration.ofDays(1));
  }

  @Test
  void workThatTakesLongIsBrokenOffWithoutAnError() {
    CompletableFuture<Void> job = new CompletableFuture<>();
    CompletableFuture<Void> answered = run(job);
    work.finish(Duration.ofMillis(10));
    job.completeExceptionally(new IllegalStateException("the database is gone"));
    answered.join();
  }

  @Test
  void aFailureBeforeIsToldAsEver() {
    CompletableFuture<Void> failed =
        run(CompletableFuture.failedFuture(new IllegalStateException("a slip")));
    assertThrows(CompletionException.class, failed::join);
    work.finish(Duration.ofDays(1));
  }
}
