package club.emberwell.search.index;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import org.jboss.logging.Logger;

/** At most one build of a new index at a time, on a thread of its own. */
final class Rebuilding {
  private static final Logger LOG = Logger.getLogger(Rebuilding.class);
  private static final long PAUSE_AFTER_FAILURE = TimeUnit.SECONDS.toNanos(2);

  /** Makes a new index; gives up with an exception once it is told to stop. */
  interface Build {
    Generation run(BooleanSupplier stopped) throws IOException;
  }

  private final Build build;
  private Thread thread;
  private Generation built;
  private boolean failed;
  private long failedAt;
  private volatile boolean stopped;
  private int count;

  Rebuilding(Build build) {
    this.build = build;
  }

  /** Starts a build unless one runs, has not been taken yet, or has just failed. */
  synchronized void start() {
    boolean tooSoon = failed && System.nanoTime() - failedAt < PAUSE_AFTER_FAILURE;
    if (stopped || tooSoon || running()) {
      return;
    }
    thread = new Thread(this::run, "search-index-build");
    thread.setDaemon(true);
    thread.start();
  }

  private void run() {
    Generation made = null;
    try {
      made = build.run(() -> stopped);
    } catch (IOException | RuntimeException e) {
      if (!stopped) {
        LOG.warnf(e, "The search index could not be built; trying again");
      }
    }
    end(made);
  }

  private synchronized void end(Generation made) {
    thread = null;
    failed = made == null;
    failedAt = System.nanoTime();
    built = made;
    if (made != null) {
      count++;
    }
    if (stopped) {
      discard();
    }
  }

  synchronized boolean running() {
    return thread != null || built != null;
  }

  /** Builds that succeeded. */
  synchronized int count() {
    return count;
  }

  /** The new index, once; the caller closes it. */
  synchronized Optional<Generation> finished() {
    Optional<Generation> taken = Optional.ofNullable(built);
    built = null;
    return taken;
  }

  /** Never by an interrupt: that would close the files under the writer. */
  void stop() {
    stopped = true;
    Thread running;
    synchronized (this) {
      running = thread;
      discard();
    }
    if (running != null) {
      try {
        running.join(TimeUnit.SECONDS.toMillis(10));
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
    }
  }

  private void discard() {
    if (built == null) {
      return;
    }
    try {
      built.close();
    } catch (UncheckedIOException e) {
      LOG.warnf("A new search index was not closed cleanly (%s)", e);
    }
    built = null;
  }
}
