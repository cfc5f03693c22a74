package club.emberwell.stats;

import java.util.Optional;

/**
 * Where one more member's value will land: between the r-th smallest and r-th largest of m values
 * with probability (m + 1 - 2r) / (m + 1), whatever the continuous distribution, because the new
 * value is equally likely to fall in any of the m + 1 gaps.
 *
 * <p>Source: Wilks, "Determination of sample sizes for setting tolerance limits", Annals of
 * Mathematical Statistics 12 (1941) 91-96; David &amp; Nagaraja, Order Statistics, section 7.3.
 */
public final class NextMemberInterval {
  /** The level of the band to plan a grid over. */
  public static final double LEVEL = 0.8;

  /** Fewest voices of which a span is shown at all. */
  public static final int FEWEST = 3;

  private static final double ROUNDING = 1e-9;

  private NextMemberInterval() {}

  /**
   * The ranks (from 1) for a level; empty where n values cannot reach it (0.8 needs 9).
   *
   * @param n number of values, not negative
   */
  public static Optional<Ranks> ranks(int n, double level) {
    Checked.level(level);
    int rank = (int) Math.floor((n + 1) * (1 - level) / 2 + ROUNDING);
    if (rank < 1) {
      return Optional.empty();
    }
    return Optional.of(new Ranks(rank, n + 1 - rank, (n + 1.0 - 2 * rank) / (n + 1)));
  }

  /** The range between those order statistics, with the coverage to print. */
  public static Optional<Interval> of(double[] values, double level) {
    Checked.finite(values);
    return ranks(values.length, level).map(ranks -> ranks.of(values));
  }

  /** Chance that the next member lands between the smallest and the largest of n values. */
  public static double spanCoverage(int n) {
    return n < 1 ? 0 : (n - 1.0) / (n + 1);
  }

  /**
   * The band to plan a grid over. From 9 values the 80 % band, interpolated between order
   * statistics by quantiles of type 6; from 3 to 8 the smallest to the largest, with the lower
   * coverage that has; below 3 nothing.
   */
  public static Optional<Interval> band(double[] values) {
    Checked.finite(values);
    int n = values.length;
    if (n < FEWEST) {
      return Optional.empty();
    }
    if (ranks(n, LEVEL).isEmpty()) {
      return Optional.of(new Ranks(1, n, spanCoverage(n)).of(values));
    }
    double[] ends = Quantiles.band(values, (1 - LEVEL) / 2, (1 + LEVEL) / 2);
    return Optional.of(new Interval(ends[0], ends[1], LEVEL));
  }
}
