package club.emberwell.web.lot;

import club.emberwell.lot.CountedShare;

/** A usable share in words. */
final class ShareText {
  private static final double PERCENT = 100;

  private ShareText() {}

  /** "92 % (95 % interval 81 % to 97 %)". */
  static String of(CountedShare share) {
    return "%s (95 %% interval %s to %s)"
        .formatted(percent(share.share()), percent(share.low()), percent(share.high()));
  }

  static String percent(double share) {
    return Math.round(PERCENT * share) + " %";
  }
}
