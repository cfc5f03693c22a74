package club.emberwell.stats;

import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * Confidence intervals of a share, k of n. Reviewed by Newcombe, "Two-sided confidence intervals
 * for the single proportion", Statistics in Medicine 17 (1998) 857-872, and Brown, Cai &amp;
 * DasGupta, Statistical Science 16 (2001) 101-133.
 */
public final class BinomialInterval {
  private BinomialInterval() {}

  /**
   * Wilson's score interval for a share that need not be a whole count, such as a mean of shares.
   *
   * @param share 0 to 1
   * @param n what the share is worth, more than 0
   */
  public static Interval wilsonShare(double share, double n, double level) {
    Checked.probability(share);
    Checked.level(level);
    if (!(n > 0)) {
      throw new IllegalArgumentException("a share of nothing: " + n);
    }
    double z = z(level);
    double middle = share + z * z / (2 * n);
    double half = z * Math.sqrt(share * (1 - share) / n + z * z / (4 * n * n));
    double scale = 1 + z * z / n;
    double low = share == 0 ? 0 : (middle - half) / scale;
    double high = share == 1 ? 1 : (middle + half) / scale;
    return new Interval(Math.max(0, low), Math.min(1, high), level);
  }

  /** The standard normal quantile of a two-sided level: 1.96 for 0.95. */
  static double z(double level) {
    return NormalDistribution.of(0, 1).inverseSurvivalProbability((1 - level) / 2);
  }
}
