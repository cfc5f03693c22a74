package club.emberwell.access;

import io.smallrye.mutiny.Uni;
import io.smallrye.mutiny.infrastructure.Infrastructure;
import java.util.concurrent.CompletableFuture;

/**
 * Lets a request wait for work of other threads without holding one itself. What follows runs on a
 * thread that may block, as the same request; where its client goes away, the work is cancelled.
 */
public final class Awaited {
  private Awaited() {}

  public static <T> Uni<T> of(CompletableFuture<T> work) {
    return Uni.createFrom().completionStage(work).emitOn(Infrastructure.getDefaultWorkerPool());
  }
}
