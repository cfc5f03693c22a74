package club.emberwell.stats;

import java.util.Arrays;
import java.util.Optional;
import org.apache.commons.statistics.distribution.TDistribution;

/**
 * The mean of estimates that differ by more than their own errors: here, of members' ln doses, said
 * on pages as "machines differ by a factor of ...".
 *
 * <p>Sources: between-variance by Paule &amp; Mandel (1982); interval by Hartung &amp; Knapp,
 * Statistics in Medicine 20 (2001) 3875-3889; prediction interval with k - 2 degrees of freedom by
 * Higgins, Thompson &amp; Spiegelhalter, JRSS A 172 (2009) 137-159. Checked against R's metafor.
 *
 * @param k number of estimates
 * @param mean weighted mean
 * @param error its standard error by the weights
 * @param tau2 variance between the estimates
 * @param knappHartungError standard error by Hartung and Knapp; NaN of one estimate
 */
public record RandomEffects(
    int k, double mean, double error, double tau2, double knappHartungError) {

  /** Level of the intervals. */
  public static final double LEVEL = 0.95;

  private static final double PRECISION = 1e-14;

  /**
   * The analysis.
   *
   * @param estimates finite
   * @param variances squared standard errors, positive
   * @return empty of no estimates
   */
  public static Optional<RandomEffects> of(double[] estimates, double[] variances) {
    Checked.sameLength(estimates.length, variances.length);
    Checked.finite(estimates);
    Checked.positive(variances);
    int k = estimates.length;
    if (k == 0) {
      return Optional.empty();
    }
    double tau2 = k == 1 ? 0 : between(estimates, variances);
    Weighted random = Weighted.of(estimates, variances, tau2);
    return Optional.of(
        new RandomEffects(
            k,
            random.mean(),
            Math.sqrt(1 / random.sum()),
            tau2,
            Math.sqrt(random.squares() / (k - 1) / random.sum())));
  }

  /** By bisection: the variance at which the weighted sum of squares is k - 1; 0 if none is. */
  private static double between(double[] y, double[] v) {
    int degrees = y.length - 1;
    if (Weighted.of(y, v, 0).squares() <= degrees) {
      return 0;
    }
    double low = 0;
    double high = 1;
    while (Weighted.of(y, v, high).squares() > degrees) {
      high *= 2;
    }
    while (high - low > PRECISION * high) {
      double middle = (low + high) / 2;
      if (Weighted.of(y, v, middle).squares() > degrees) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (low + high) / 2;
  }

  /** Interval of the mean by Hartung and Knapp, t with k - 1; empty of one estimate. */
  public Optional<Interval> interval() {
    return k < 2 ? Optional.empty() : Optional.of(around(t(k - 1) * knappHartungError));
  }

  /**
   * Where one more member's true value will lie, t with k - 2; empty below 3 estimates. For few
   * members it covers less than it says (simulated: 92 % instead of 95 % at 8).
   */
  public Optional<Interval> prediction() {
    return k < 3 ? Optional.empty() : Optional.of(around(t(k - 2) * spread()));
  }

  /** For estimates on the log scale: exp(tau), the factor by which members typically differ. */
  public double factor() {
    return Math.exp(Math.sqrt(tau2));
  }

  private double spread() {
    return Math.sqrt(tau2 + error * error);
  }

  private Interval around(double reach) {
    return new Interval(mean - reach, mean + reach, LEVEL);
  }

  private static double t(int degrees) {
    return TDistribution.of(degrees).inverseSurvivalProbability((1 - LEVEL) / 2);
  }

  /** Sums over weights 1 / (variance + tau2). */
  private record Weighted(double mean, double sum, double squares) {
    static Weighted of(double[] y, double[] v, double tau2) {
      double[] w = Arrays.stream(v).map(variance -> 1 / (variance + tau2)).toArray();
      double sum = 0;
      double total = 0;
      for (int i = 0; i < w.length; i++) {
        sum += w[i];
        total += w[i] * y[i];
      }
      double mean = total / sum;
      double rest = 0;
      for (int i = 0; i < w.length; i++) {
        rest += w[i] * (y[i] - mean) * (y[i] - mean);
      }
      return new Weighted(mean, sum, rest);
    }
  }
}
