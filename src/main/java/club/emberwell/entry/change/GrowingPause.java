package club.emberwell.entry.change;

import java.time.Duration;

/**
 * Holds back what comes again and again: the first few times at once, then with pauses, each twice
 * as long as the last, up to the longest. Once it has stayed away for twice the longest, it counts
 * from the beginning.
 */
public final class GrowingPause {
  private final int atOnce;
  private final Duration first;
  private final Duration longest;
  private int count;
  private long last;
  private Duration pause = Duration.ZERO;

  /**
   * @param atOnce how many times without a pause
   */
  public GrowingPause(int atOnce, Duration first, Duration longest) {
    this.atOnce = atOnce;
    this.first = first;
    this.longest = longest;
  }

  /** It begins once more; the pause counts from here. */
  public synchronized void begin() {
    if (count > 0 && since().compareTo(longest.multipliedBy(2)) > 0) {
      count = 0;
    }
    count++;
    last = System.nanoTime();
    if (count < atOnce) {
      pause = Duration.ZERO;
    } else {
      Duration next = pause.isZero() ? first : pause.multipliedBy(2);
      pause = next.compareTo(longest) < 0 ? next : longest;
    }
  }

  /** How long it still has to wait. */
  public synchronized Duration left() {
    Duration left = count == 0 ? Duration.ZERO : pause.minus(since());
    return left.isNegative() ? Duration.ZERO : left;
  }

  public boolean isOver() {
    return left().isZero();
  }

  private Duration since() {
    return Duration.ofNanos(System.nanoTime() - last);
  }
}
