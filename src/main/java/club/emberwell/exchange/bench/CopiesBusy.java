package club.emberwell.exchange.bench;

import java.time.Duration;

/** More copies are being read than this server does at once; nothing was written. */
public class CopiesBusy extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final Duration wait;

  CopiesBusy(Duration wait) {
    super("Other copies are being read at this moment. Send it again in a few seconds.");
    this.wait = wait;
  }

  /** When to come again. */
  public Duration retryAfter() {
    return wait;
  }
}
