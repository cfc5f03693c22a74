package club.emberwell.remark;

import java.time.Duration;

/** Too many tries; come back after the wait. */
public final class TooManyTries extends TurnedDown {
  private final transient Duration wait;

  public TooManyTries(Duration wait) {
    super("Too many tries. Come back in " + Math.max(1, wait.toSeconds()) + " seconds.");
    this.wait = wait;
  }

  public Duration retryAfter() {
    return wait;
  }
}
