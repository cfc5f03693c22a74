package club.emberwell.stats;

import java.util.Optional;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;

/**
 * The mean of estimates that differ by more than their own errors: here, of members' ln doses, said
 * on pages as "members differ by a factor of ...".
 *
 * <p>Sources: between-variance by Paule &amp; Mandel, J. Res. NBS 87 (1982) 377-385; its interval
 * by the Q-profile, Viechtbauer, Statistics in Medicine 26 (2007) 37-52. Checked against R's
 * metafor.
 *
 * @param k number of estimates
 * @param mean weighted mean
 * @param error its standard error by the weights
 * @param tau2 variance between the estimates
 */
public record RandomEffects(int k, double mean, double error, double tau2) {

  /** Level of the interval of the variance between. */
  public static final double LEVEL = 0.95;

  private static final double PRECISION = 1e-14;
  private static final double ROUGHLY = 1e-6;

  /**
   * The analysis.
   *
   * @param estimates finite
   * @param variances squared standard errors, positive
   * @return empty of no estimates
   */
  public static Optional<RandomEffects> of(double[] estimates, double[] variances) {
    check(estimates, variances);
    int k = estimates.length;
    if (k == 0) {
      return Optional.empty();
    }
    double tau2 = k == 1 ? 0 : between(estimates, variances, k - 1, PRECISION);
    Weighted random = Weighted.of(estimates, variances, tau2);
    return Optional.of(new RandomEffects(k, random.mean(), Math.sqrt(1 / random.sum()), tau2));
  }

  /** The 95 % interval of the variance between; empty below 2 estimates. */
  public static Optional<Interval> tau2Interval(double[] estimates, double[] variances) {
    check(estimates, variances);
    int k = estimates.length;
    if (k < 2) {
      return Optional.empty();
    }
    ChiSquaredDistribution squares = ChiSquaredDistribution.of(k - 1);
    double tail = (1 - LEVEL) / 2;
    double most = squares.inverseSurvivalProbability(tail);
    double least = squares.inverseCumulativeProbability(tail);
    return Optional.of(
        new Interval(
            between(estimates, variances, most, ROUGHLY),
            between(estimates, variances, least, ROUGHLY),
            LEVEL));
  }

  private static void check(double[] estimates, double[] variances) {
    Checked.sameLength(estimates.length, variances.length);
    Checked.finite(estimates);
    Checked.positive(variances);
  }

  /** By bisection: the variance at which the weighted sum of squares is as told; 0 if none is. */
  private static double between(double[] y, double[] v, double squares, double precision) {
    if (Weighted.of(y, v, 0).squares() <= squares) {
      return 0;
    }
    double low = 0;
    double high = 1;
    while (Weighted.of(y, v, high).squares() > squares) {
      high *= 2;
    }
    while (high - low > precision * high) {
      double middle = (low + high) / 2;
      if (Weighted.of(y, v, middle).squares() > squares) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (low + high) / 2;
  }

  /** For estimates on the log scale: exp(tau), the factor by which members typically differ. */
  public double factor() {
    return Math.exp(Math.sqrt(tau2));
  }

  /** Sums over weights 1 / (variance + tau2). */
  private record Weighted(double mean, double sum, double squares) {
    static Weighted of(double[] y, double[] v, double tau2) {
      double sum = 0;
      double total = 0;
      for (int i = 0; i < y.length; i++) {
        double w = 1 / (v[i] + tau2);
        sum += w;
        total += w * y[i];
      }
      double mean = total / sum;
      double rest = 0;
      for (int i = 0; i < y.length; i++) {
        rest += (y[i] - mean) * (y[i] - mean) / (v[i] + tau2);
      }
      return new Weighted(mean, sum, rest);
    }
  }
}
