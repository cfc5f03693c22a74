package club.emberwell.exchange.bench;

import jakarta.annotation.PreDestroy;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;

/** Copies are read by a thread of their own, one of a member at a time: none that answers waits. */
@ApplicationScoped
class CopyTurns {
  private final CopyLimits limits;
  private final ThreadPoolExecutor threads;
  private final Set<UUID> members = ConcurrentHashMap.newKeySet();

  CopyTurns(CopyLimits limits) {
    this.limits = limits;
    threads =
        new ThreadPoolExecutor(
            limits.atOnce(),
            limits.atOnce(),
            1,
            TimeUnit.MINUTES,
            new ArrayBlockingQueue<>(limits.waiting()),
            task -> {
              Thread thread = new Thread(task, "bench-copies");
              thread.setDaemon(true);
              return thread;
            });
    threads.allowCoreThreadTimeOut(true);
  }

  @PreDestroy
  void stop() {
    threads.shutdownNow();
  }

  /** Fails with {@link CopiesBusy} where too much waits, or one of this member is being read. */
  <T> CompletableFuture<T> ask(UUID member, Supplier<T> work) {
    if (!members.add(member)) {
      return CompletableFuture.failedFuture(new CopiesBusy(limits.again()));
    }
    CompletableFuture<T> done = new CompletableFuture<>();
    CompletableFuture<Void> begun = new CompletableFuture<>();
    begun
        .orTimeout(limits.queued().toMillis(), TimeUnit.MILLISECONDS)
        .exceptionally(
            late -> {
              done.completeExceptionally(new CopiesBusy(limits.again()));
              return null;
            });
    try {
      threads.execute(
          () -> {
            begun.complete(null);
            run(member, work, done);
          });
    } catch (RejectedExecutionException e) {
      members.remove(member);
      done.completeExceptionally(new CopiesBusy(limits.again()));
    }
    return done;
  }

  private <T> void run(UUID member, Supplier<T> work, CompletableFuture<T> done) {
    T made = null;
    Throwable failure = null;
    try {
      made = done.isDone() ? null : work.get();
    } catch (RuntimeException | OutOfMemoryError e) {
      failure = e;
    } finally {
      // before anybody is answered, who may come again at once
      members.remove(member);
    }
    if (failure == null) {
      done.complete(made);
    } else {
      done.completeExceptionally(
          failure instanceof OutOfMemoryError ? new CopiesBusy(limits.again()) : failure);
    }
  }
}
