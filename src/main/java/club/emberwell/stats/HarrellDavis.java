package club.emberwell.stats;

import java.util.Arrays;
import org.apache.commons.statistics.distribution.BetaDistribution;

/**
 * A smooth quantile: the mean of all order statistics weighted by the Beta((n+1)p, (n+1)(1-p))
 * distribution. Source: Harrell &amp; Davis, Biometrika 69 (1982) 635-640.
 */
public final class HarrellDavis {
  private HarrellDavis() {}

  /**
   * The quantile; NaN of no values.
   *
   * @param p above 0 and below 1
   */
  public static double quantile(double[] values, double p) {
    Checked.level(p);
    int n = values.length;
    if (n == 0) {
      return Double.NaN;
    }
    double[] ascending = Checked.finite(values).clone();
    Arrays.sort(ascending);
    BetaDistribution beta = BetaDistribution.of((n + 1) * p, (n + 1) * (1 - p));
    double sum = 0;
    double below = 0;
    for (int i = 0; i < n; i++) {
      double upTo = beta.cumulativeProbability((i + 1.0) / n);
      sum += (upTo - below) * ascending[i];
      below = upTo;
    }
    return sum;
  }
}
