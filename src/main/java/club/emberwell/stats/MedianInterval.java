package club.emberwell.stats;

import java.util.Optional;
import org.apache.commons.statistics.distribution.BinomialDistribution;

/**
 * The order-statistic (sign-test) confidence interval of a median: between the l-th smallest and
 * the l-th largest value, l the largest rank whose exact coverage is at least the level asked for.
 *
 * <p>Source: Conover, Practical Nonparametric Statistics, section 3.2; David &amp; Nagaraja, Order
 * Statistics, section 7.1. It holds for any continuous distribution. At 0.95 it exists from 6
 * values (coverage 96.9 %): below that there is none and none is shown.
 */
public final class MedianInterval {
  /** The level used everywhere unless another is asked for. */
  public static final double LEVEL = 0.95;

  /** Guards a level that is met exactly but for rounding. */
  private static final double ROUNDING = 1e-12;

  private MedianInterval() {}

  /** The interval at 0.95; empty below 6 values. */
  public static Optional<Interval> of(double[] values) {
    return of(values, LEVEL);
  }

  /** The interval at a level between 0 and 1; empty where the values are too few for it. */
  public static Optional<Interval> of(double[] values, double level) {
    Checked.finite(values);
    return ranks(values.length, level).map(ranks -> ranks.of(values));
  }

  /**
   * The ranks (from 1) and their exact coverage 1 - 2 P(B &lt; l), B ~ Binomial(n, 1/2).
   *
   * @param n number of values, not negative
   */
  public static Optional<Ranks> ranks(int n, double level) {
    Checked.level(level);
    if (n < 1) {
      return Optional.empty();
    }
    BinomialDistribution signs = BinomialDistribution.of(n, 0.5);
    double tail = (1 - level) / 2 + ROUNDING;
    int rank = signs.inverseCumulativeProbability(tail) + 1;
    while (rank > 0 && signs.cumulativeProbability(rank - 1) > tail) {
      rank--;
    }
    if (rank < 1) {
      return Optional.empty();
    }
    double coverage = 1 - 2 * signs.cumulativeProbability(rank - 1);
    return Optional.of(new Ranks(rank, n + 1 - rank, coverage));
  }
}
