package club.emberwell.report.photo;

import java.time.Duration;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;

/**
 * The memory that all pictures in progress may take together: each says from its header what it
 * needs before anything of it is decoded, and waits until so much is free.
 */
final class PictureMemory {
  private static final int UNIT = 1024;

  private final int units;
  private final Semaphore free;

  /**
   * @param bytes all there is
   */
  PictureMemory(long bytes) {
    units = (int) Math.min(Integer.MAX_VALUE, bytes / UNIT);
    free = new Semaphore(units, true);
  }

  /** The most that one picture can have. */
  long most() {
    return (long) units * UNIT;
  }

  /** What is held until it is given back. */
  interface Held {
    void giveBack();
  }

  /**
   * Takes so many bytes out of what is free, at most all.
   *
   * @return null where they did not come free in time
   */
  Held hold(long bytes, Duration within) throws InterruptedException {
    int wanted = (int) Math.min(units, bytes / UNIT + 1);
    return free.tryAcquire(wanted, within.toMillis(), TimeUnit.MILLISECONDS)
        ? () -> free.release(wanted)
        : null;
  }
}
