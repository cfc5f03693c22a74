package club.emberwell.report.photo;

import jakarta.annotation.PreDestroy;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.stream.Stream;
import org.jboss.logging.Logger;

/**
 * Whose pictures are worked at, and whose wait: by few threads of their own, so that whoever sends
 * many, large or hostile ones takes none that answers. Each member has one at work and a share of
 * those that wait; what is more is told to come again at once. Uploads wait without a thread
 * ({@link #ask}); only what is done with our own small pictures holds the thread of its request
 * ({@link #now}), never more of them than may wait here, and never longer than a few seconds.
 */
@ApplicationScoped
public class PictureTurns {
  private static final Logger LOG = Logger.getLogger(PictureTurns.class);

  static final String BUSY =
      "Many photos are being made ready at this moment. Send it again in a few seconds.";

  private final PictureLimits limits;
  private final PictureMemory memory;
  private final ThreadPoolExecutor threads;
  private final List<Turn<?>> waiting = new ArrayList<>();
  private final List<Turn<?>> working = new ArrayList<>();

  PictureTurns(PictureLimits limits) {
    this.limits = limits;
    memory = new PictureMemory(Runtime.getRuntime().maxMemory() / limits.partOfHeap());
    threads =
        new ThreadPoolExecutor(
            limits.atOnce(),
            limits.atOnce(),
            1,
            TimeUnit.MINUTES,
            // holds none: a turn is given where a thread is free
            new LinkedBlockingQueue<>(),
            PictureTurns::thread);
    threads.allowCoreThreadTimeOut(true);
  }

  private static Thread thread(Runnable task) {
    Thread thread = new Thread(task, "pictures");
    thread.setDaemon(true);
    return thread;
  }

  @PreDestroy
  void stop() {
    threads.shutdownNow();
  }

  /** What is done with pictures. */
  interface Work<T> {
    T in(PictureStint stint) throws IOException;
  }

  /** One upload, at work or waiting. */
  private final class Turn<T> implements Runnable {
    private final UUID member;
    private final Work<T> work;
    private final CompletableFuture<T> done = new CompletableFuture<>();
    private final CompletableFuture<Void> begun = new CompletableFuture<>();
    private volatile PictureStint stint;

    Turn(UUID member, Work<T> work) {
      this.member = member;
      this.work = work;
      done.whenComplete((made, failure) -> left());
      begun
          .orTimeout(limits.queued().toMillis(), TimeUnit.MILLISECONDS)
          .whenComplete(
              (nothing, late) -> {
                if (late != null) {
                  done.completeExceptionally(busy());
                }
              });
    }

    boolean of(UUID whom) {
      return Objects.equals(member, whom);
    }

    /** Whoever asked has gone, or has the answer. */
    private void left() {
      PictureStint now = stint;
      if (now != null) {
        now.leave();
      }
      begun.complete(null);
      forget(this);
    }

    @Override
    public void run() {
      begun.complete(null);
      stint = new PictureStint(limits, memory);
      try {
        if (!done.isDone()) {
          done.complete(work.in(stint));
        }
      } catch (IOException | RuntimeException e) {
        done.completeExceptionally(e);
      } catch (OutOfMemoryError e) {
        LOG.warn("not enough memory for a picture", e);
        done.completeExceptionally(busy());
      } finally {
        ended(this);
      }
    }
  }

  /**
   * Has pictures worked at.
   *
   * @param member whose share it takes; null = that of all strangers
   * @return what comes of it; cancelled, it ends the work. Fails with {@link PicturesBusy}
   */
  <T> CompletableFuture<T> ask(UUID member, Work<T> work) {
    Turn<T> turn = new Turn<>(member, work);
    synchronized (this) {
      long own =
          Stream.concat(waiting.stream(), working.stream()).filter(t -> t.of(member)).count();
      if (own >= limits.ofOneMember() || waiting.size() >= limits.waiting()) {
        turn.done.completeExceptionally(busy());
      } else {
        waiting.add(turn);
        next();
      }
    }
    return turn.done;
  }

  /**
   * The same for whoever cannot but wait.
   *
   * @throws PicturesBusy where nothing came of it in time
   */
  <T> T now(UUID member, Work<T> work) {
    CompletableFuture<T> done = ask(member, work);
    try {
      return done.get(limits.own().toMillis(), TimeUnit.MILLISECONDS);
    } catch (TimeoutException e) {
      throw busy();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw busy();
    } catch (ExecutionException e) {
      if (e.getCause() instanceof RuntimeException own) {
        throw own;
      }
      throw new IllegalStateException(e.getCause());
    } finally {
      done.cancel(false);
    }
  }

  private PicturesBusy busy() {
    return new PicturesBusy(BUSY, limits.again());
  }

  /** Gives threads to those that wait longest, but none a second one. */
  private synchronized void next() {
    while (working.size() < limits.atOnce()) {
      Turn<?> first =
          waiting.stream()
              .filter(turn -> working.stream().noneMatch(other -> other.of(turn.member)))
              .findFirst()
              .orElse(null);
      if (first == null) {
        return;
      }
      waiting.remove(first);
      working.add(first);
      threads.execute(first);
    }
  }

  private synchronized void ended(Turn<?> turn) {
    working.remove(turn);
    next();
  }

  private synchronized void forget(Turn<?> turn) {
    waiting.remove(turn);
  }
}
