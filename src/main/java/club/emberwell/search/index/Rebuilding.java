package club.emberwell.search.index;

import club.emberwell.entry.change.GrowingPause;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import org.jboss.logging.Logger;

/** At most one build of a new index at a time, on a thread of its own. */
final class Rebuilding {
  private static final Logger LOG = Logger.getLogger(Rebuilding.class);
  private static final Duration PAUSE_AFTER_FAILURE = Duration.ofSeconds(2);

  /** Makes a new index; gives up with an exception once it is told to stop. */
  interface Build {
    Generation run(BooleanSupplier stopped) throws IOException;
  }

  private final Build build;
  private final GrowingPause pause;
  private Thread thread;
  private Generation built;
  private boolean failed;
  private long failedAt;
  private volatile boolean stopped;
  private int count;
  private String why = "";

  Rebuilding(Build build, GrowingPause pause) {
    this.build = build;
    this.pause = pause;
  }

  /**
   * Starts a build because the index at hand does not do; not while one runs or has not been taken
   * yet, where one has just failed, or where there were so many of late that the next has to wait.
   *
   * @param reason in words
   */
  synchronized void need(String reason) {
    if (isFree() && left().isZero()) {
      pause.begin();
      start(reason);
    }
  }

  /** The same for what somebody did, which does not come again by itself: it has no pause. */
  synchronized void ask(String reason) {
    if (isFree() && failing().isZero()) {
      start(reason);
    }
  }

  private boolean isFree() {
    return !stopped && !running();
  }

  private void start(String reason) {
    why = reason;
    LOG.infof("Building the search index: %s", reason);
    thread = new Thread(this::run, "search-index-build");
    thread.setDaemon(true);
    thread.start();
  }

  /** How long the next build has to wait. */
  synchronized Duration left() {
    Duration left = pause.left();
    Duration failing = failing();
    return left.compareTo(failing) > 0 ? left : failing;
  }

  private Duration failing() {
    Duration left =
        failed ? PAUSE_AFTER_FAILURE.minusNanos(System.nanoTime() - failedAt) : Duration.ZERO;
    return left.isNegative() ? Duration.ZERO : left;
  }

  /** Why the last build was started. */
  synchronized String why() {
    return why;
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

  /** The new index, until it is taken. */
  synchronized Optional<Generation> finished() {
    return Optional.ofNullable(built);
  }

  /** The new index is the caller's, who closes it. */
  synchronized void taken() {
    built = null;
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
