package club.emberwell.stats;

import java.util.Arrays;

/**
 * Least-squares fits under an order restriction by pooling adjacent violators. Source: Barlow,
 * Bartholomew, Bremner &amp; Brunk, Statistical Inference under Order Restrictions (1972), chapter
 * 1. Values are in the order of the covariate; no values give no values; NaN is refused.
 */
public final class Isotonic {
  private Isotonic() {}

  /** The closest never falling sequence. */
  public static double[] increasing(double[] y, double[] weights) {
    Checked.sameLength(y.length, weights.length);
    Checked.finite(y);
    Checked.weights(weights);
    double[] level = new double[y.length];
    double[] weight = new double[y.length];
    int[] size = new int[y.length];
    int blocks = 0;
    for (int i = 0; i < y.length; i++) {
      level[blocks] = y[i];
      weight[blocks] = weights[i];
      size[blocks] = 1;
      blocks++;
      while (blocks > 1 && level[blocks - 2] > level[blocks - 1]) {
        merge(level, weight, size, blocks - 2);
        blocks--;
      }
    }
    double[] fit = new double[y.length];
    int at = 0;
    for (int block = 0; block < blocks; block++) {
      Arrays.fill(fit, at, at + size[block], level[block]);
      at += size[block];
    }
    return fit;
  }

  /** The closest never rising sequence. */
  public static double[] decreasing(double[] y, double[] weights) {
    double[] mirrored = increasing(negative(y), weights);
    return negative(mirrored);
  }

  /** A fit and its weighted sum of squared errors. */
  public record Unimodal(double[] fit, double squaredError) {}

  /**
   * The closest sequence that rises and then falls: the best of all splits into a rising left and a
   * falling right part, the first of equals.
   */
  public static Unimodal unimodal(double[] y, double[] weights) {
    Checked.sameLength(y.length, weights.length);
    Unimodal best = new Unimodal(new double[0], y.length == 0 ? 0 : Double.POSITIVE_INFINITY);
    for (int split = 1; split <= y.length; split++) {
      double[] fit = Arrays.copyOf(part(y, weights, 0, split, true), y.length);
      double[] right = part(y, weights, split, y.length, false);
      System.arraycopy(right, 0, fit, split, right.length);
      double error = 0;
      for (int i = 0; i < y.length; i++) {
        error += weights[i] * (y[i] - fit[i]) * (y[i] - fit[i]);
      }
      if (error < best.squaredError) {
        best = new Unimodal(fit, error);
      }
    }
    return best;
  }

  private static double[] part(double[] y, double[] weights, int from, int to, boolean rising) {
    double[] values = Arrays.copyOfRange(y, from, to);
    double[] own = Arrays.copyOfRange(weights, from, to);
    return rising ? increasing(values, own) : decreasing(values, own);
  }

  private static void merge(double[] level, double[] weight, int[] size, int block) {
    double sum = weight[block] + weight[block + 1];
    if (sum > 0) {
      level[block] = (level[block] * weight[block] + level[block + 1] * weight[block + 1]) / sum;
    } else {
      level[block] = (level[block] + level[block + 1]) / 2;
    }
    weight[block] = sum;
    size[block] += size[block + 1];
  }

  private static double[] negative(double[] values) {
    return Arrays.stream(values).map(value -> -value).toArray();
  }
}
