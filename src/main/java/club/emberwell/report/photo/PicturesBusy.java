package club.emberwell.report.photo;

import java.time.Duration;

/** More pictures are being made ready than this server does at once; nothing was stored. */
public class PicturesBusy extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final Duration wait;

  PicturesBusy(String sentence, Duration wait) {
    super(sentence);
    this.wait = wait;
  }

  /** When to come again. */
  public Duration retryAfter() {
    return wait;
  }
}
