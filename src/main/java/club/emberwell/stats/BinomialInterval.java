package club.emberwell.stats;

import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.interval.BinomialConfidenceInterval;

/**
 * Confidence intervals of a share, k of n. Reviewed by Newcombe, "Two-sided confidence intervals
 * for the single proportion", Statistics in Medicine 17 (1998) 857-872, and Brown, Cai &amp;
 * DasGupta, Statistical Science 16 (2001) 101-133.
 *
 * <p>All are refused for n = 0: nothing is known, and callers show no interval.
 */
public final class BinomialInterval {
  private BinomialInterval() {}

  /** Wilson's score interval (1927) for whole counts. */
  public static Interval wilson(int successes, int trials, double level) {
    return library(BinomialConfidenceInterval.WILSON_SCORE, successes, trials, level);
  }

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

  /**
   * Wilson's score interval with continuity correction (Newcombe 1998, method 4; the correction is
   * no larger than the distance of the share from one half, as in R's prop.test).
   */
  public static Interval wilsonCorrected(int successes, int trials, double level) {
    check(successes, trials);
    double n = trials;
    double p = successes / n;
    double z = z(Checked.level(level));
    double correction = Math.min(0.5, Math.abs(successes - n / 2));
    double scale = 1 + z * z / n;
    double low = p - correction / n;
    double high = p + correction / n;
    double shift = z * z / (2 * n);
    double lower = low + shift - z * Math.sqrt(low * (1 - low) / n + z * z / (4 * n * n));
    double upper = high + shift + z * Math.sqrt(high * (1 - high) / n + z * z / (4 * n * n));
    return new Interval(
        successes == 0 ? 0 : Math.max(0, lower / scale),
        successes == trials ? 1 : Math.min(1, upper / scale),
        level);
  }

  /**
   * Jeffreys' interval: quantiles of Beta(k + 1/2, n - k + 1/2), with the bound at 0 for k = 0 and
   * at 1 for k = n (Brown, Cai &amp; DasGupta 2001, section 4.1.2).
   */
  public static Interval jeffreys(int successes, int trials, double level) {
    return library(BinomialConfidenceInterval.JEFFREYS, successes, trials, level);
  }

  /** Agresti &amp; Coull (1998), cut off at 0 and 1. */
  public static Interval agrestiCoull(int successes, int trials, double level) {
    return library(BinomialConfidenceInterval.AGRESTI_COULL, successes, trials, level);
  }

  /** Clopper &amp; Pearson (1934), exact and therefore wide. */
  public static Interval clopperPearson(int successes, int trials, double level) {
    return library(BinomialConfidenceInterval.CLOPPER_PEARSON, successes, trials, level);
  }

  /** The standard normal quantile of a two-sided level: 1.96 for 0.95. */
  static double z(double level) {
    return NormalDistribution.of(0, 1).inverseSurvivalProbability((1 - level) / 2);
  }

  private static Interval library(
      BinomialConfidenceInterval method, int successes, int trials, double level) {
    check(successes, trials);
    var found = method.fromErrorRate(trials, successes, 1 - Checked.level(level));
    return new Interval(found.getLowerBound(), found.getUpperBound(), level);
  }

  private static void check(int successes, int trials) {
    if (trials < 1 || successes < 0 || successes > trials) {
      throw new IllegalArgumentException(successes + " of " + trials);
    }
  }
}
