package club.emberwell.stats;

import java.util.Arrays;
import java.util.Comparator;

/**
 * P-values of several questions asked of the same data, adjusted so that the chance of any false
 * answer stays at the level. Source: Holm, Scandinavian Journal of Statistics 6 (1979) 65-70.
 */
public final class Holm {
  private Holm() {}

  /** Adjusted values in the order given; none of none. */
  public static double[] adjust(double[] pValues) {
    Integer[] order = new Integer[pValues.length];
    for (int i = 0; i < order.length; i++) {
      Checked.probability(pValues[i]);
      order[i] = i;
    }
    Arrays.sort(order, Comparator.comparingDouble(i -> pValues[i]));
    double[] adjusted = new double[pValues.length];
    double largest = 0;
    for (int rank = 0; rank < order.length; rank++) {
      largest = Math.max(largest, pValues[order[rank]] * (order.length - rank));
      adjusted[order[rank]] = Math.min(1, largest);
    }
    return adjusted;
  }
}
