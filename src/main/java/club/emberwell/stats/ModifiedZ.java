package club.emberwell.stats;

import java.util.function.DoubleUnaryOperator;

/**
 * Values far from the rest, by the modified z score 0.6745 (x - median) / MAD, cut at 3.5; where
 * more than half of the values are equal (MAD = 0) by (x - median) / (1.253314 mean absolute
 * deviation). Flagged values are drawn hollow and never dropped silently.
 *
 * <p>Source: Iglewicz &amp; Hoaglin, How to Detect and Handle Outliers (ASQC 1993), section 3.3;
 * 1.253314 = sqrt(pi/2). At 6 values or fewer the rule cuts honest ones, so {@link #suspects} waits
 * for 8.
 *
 * @param rule which scale was used
 * @param median median of the values
 * @param mad raw median absolute deviation from it
 * @param meanDeviation mean absolute deviation from it
 * @param z the score of each value, in the order given
 */
public record ModifiedZ(Rule rule, double median, double mad, double meanDeviation, double[] z) {

  /** Scores beyond this are suspect. */
  public static final double CUT = 3.5;

  /** Fewest values for which suspects are named. */
  public static final int FEWEST = 8;

  private static final double NORMAL = 0.6745;
  private static final double MEAN_NORMAL = 1.253314;

  /** The scale a score was made with. */
  public enum Rule {
    /** No value at all. */
    EMPTY,
    /** All values equal: every score is 0. */
    CONSTANT,
    /** Median absolute deviation. */
    MAD,
    /** Mean absolute deviation, because the median one is 0. */
    MEAN_AD
  }

  /** Scores on the scale of the values. No values: rule EMPTY, NaN and no scores. */
  public static ModifiedZ of(double[] values) {
    double median = Quantiles.median(Checked.finite(values));
    double[] deviations = map(values, x -> Math.abs(x - median));
    double mad = Quantiles.median(deviations);
    double mean = Summary.mean(deviations);
    if (values.length == 0) {
      return new ModifiedZ(Rule.EMPTY, median, mad, mean, new double[0]);
    }
    if (mad > 0) {
      double[] z = map(values, x -> NORMAL * (x - median) / mad);
      return new ModifiedZ(Rule.MAD, median, mad, mean, z);
    }
    if (mean > 0) {
      double[] z = map(values, x -> (x - median) / (MEAN_NORMAL * mean));
      return new ModifiedZ(Rule.MEAN_AD, median, mad, mean, z);
    }
    return new ModifiedZ(Rule.CONSTANT, median, mad, mean, new double[values.length]);
  }

  /** Scores of the logarithms of positive values: what settings and doses are compared on. */
  public static ModifiedZ ofLogs(double[] values) {
    return of(Checked.logs(values));
  }

  /**
   * The score of one more value, e.g. of a logarithm after {@link #ofLogs}; infinite off the one
   * value of a constant set, NaN where there is no value.
   */
  public double score(double value) {
    double off = value - median;
    return switch (rule) {
      case MAD -> NORMAL * off / mad;
      case MEAN_AD -> off / (MEAN_NORMAL * meanDeviation);
      case CONSTANT -> off == 0 ? 0 : Math.copySign(Double.POSITIVE_INFINITY, off);
      case EMPTY -> Double.NaN;
    };
  }

  /** Which values lie beyond the cut. */
  public boolean[] beyond() {
    boolean[] beyond = new boolean[z.length];
    for (int i = 0; i < z.length; i++) {
      beyond[i] = Math.abs(z[i]) > CUT;
    }
    return beyond;
  }

  /** Suspect voices, on logs: all false below 8 voices. */
  public static boolean[] suspects(double[] voices) {
    return voices.length < FEWEST ? new boolean[voices.length] : ofLogs(voices).beyond();
  }

  private static double[] map(double[] values, DoubleUnaryOperator operator) {
    double[] mapped = new double[values.length];
    for (int i = 0; i < values.length; i++) {
      mapped[i] = operator.applyAsDouble(values[i]);
    }
    return mapped;
  }
}
