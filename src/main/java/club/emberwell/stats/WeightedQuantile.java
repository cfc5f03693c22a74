package club.emberwell.stats;

import java.util.Arrays;
import java.util.Comparator;

/**
 * Quantiles of weighted values: types 1 and 2 of Hyndman &amp; Fan (1996) with the empirical
 * distribution weighted, which is what replicating each value by its weight would give.
 *
 * <p>Shares like 1/3 do not add up exactly in binary, so a cumulated weight within 1e-9 of the
 * total counts as having reached the sought one. No values give NaN; NaN is refused.
 */
public final class WeightedQuantile {
  /** Relative to the total weight. */
  static final double TIE = 1e-9;

  private WeightedQuantile() {}

  /** Type 1: the first value at which the cumulated weight reaches {@code p} of the total. */
  public static double type1(double[] values, double[] weights, double p) {
    return quantile(values, weights, p, false);
  }

  /** Type 2: as type 1, but the mean with the following value where the weight is just reached. */
  public static double type2(double[] values, double[] weights, double p) {
    return quantile(values, weights, p, true);
  }

  private static double quantile(double[] values, double[] weights, double p, boolean average) {
    Checked.sameLength(values.length, weights.length);
    Checked.finite(values);
    Checked.weights(weights);
    Checked.probability(p);
    Integer[] order = order(values, weights);
    if (order.length == 0) {
      return Double.NaN;
    }
    double total = Arrays.stream(weights).sum();
    double sought = p * total;
    double reached = 0;
    for (int i = 0; i < order.length - 1; i++) {
      reached += weights[order[i]];
      if (reached >= sought - TIE * total) {
        boolean tie = average && reached <= sought + TIE * total;
        double value = values[order[i]];
        return tie ? (value + values[order[i + 1]]) / 2 : value;
      }
    }
    return values[order[order.length - 1]];
  }

  private static Integer[] order(double[] values, double[] weights) {
    Integer[] order = new Integer[values.length];
    int n = 0;
    for (int i = 0; i < values.length; i++) {
      if (weights[i] > 0) {
        order[n++] = i;
      }
    }
    order = Arrays.copyOf(order, n);
    Arrays.sort(order, Comparator.comparingDouble(i -> values[i]));
    return order;
  }
}
