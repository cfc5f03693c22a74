package club.emberwell.stats;

import java.util.Collection;
import org.apache.commons.numbers.core.Sum;

/**
 * Means and standard deviations, summed in extended precision (Apache Commons Numbers) so that they
 * equal the certified values of the NIST Statistical Reference Datasets to all 15 digits.
 *
 * <p>No values: NaN. One value: its mean is itself; its standard deviation is NaN, not 0, because
 * one value says nothing about spread.
 */
public final class Summary {
  private Summary() {}

  /** Arithmetic mean. */
  public static double mean(double[] values) {
    return Sum.of(Checked.finite(values)).getAsDouble() / values.length;
  }

  /** As {@link #mean(double[])}. */
  public static double mean(Collection<Double> values) {
    return mean(values.stream().mapToDouble(Double::doubleValue).toArray());
  }

  /**
   * Sample standard deviation, n - 1: two passes, the second corrected for the rounding of the mean
   * (Chan, Golub &amp; LeVeque, The American Statistician 37 (1983) 242-247).
   */
  public static double standardDeviation(double[] values) {
    int n = values.length;
    if (n < 2) {
      Checked.finite(values);
      return Double.NaN;
    }
    double mean = mean(values);
    Sum deviations = Sum.create();
    Sum squares = Sum.create();
    for (double value : values) {
      double deviation = value - mean;
      deviations.add(deviation);
      squares.addProduct(deviation, deviation);
    }
    double rest = deviations.getAsDouble();
    return Math.sqrt(squares.addProduct(-rest / n, rest).getAsDouble() / (n - 1));
  }
}
