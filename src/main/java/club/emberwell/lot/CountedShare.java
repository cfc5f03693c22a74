package club.emberwell.lot;

import club.emberwell.stats.BinomialInterval;
import club.emberwell.stats.Interval;

/**
 * What share of counted pieces was usable.
 *
 * @param usable of these
 * @param received that were counted, more than 0
 * @param share usable of received, 0 to 1
 * @param low of Wilson's 95 % interval of the share
 * @param high of the same
 */
public record CountedShare(int usable, int received, double share, double low, double high) {
  private static final double LEVEL = 0.95;

  public static CountedShare of(int usable, int received) {
    double share = (double) usable / received;
    Interval interval = BinomialInterval.wilsonShare(share, received, LEVEL);
    return new CountedShare(usable, received, share, interval.low(), interval.high());
  }
}
