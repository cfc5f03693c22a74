package club.emberwell.stats;

/** What every method of the package asks of its input before it computes. */
final class Checked {
  private Checked() {}

  /** Refuses NaN and infinities. */
  static double[] finite(double[] values) {
    for (double value : values) {
      if (!Double.isFinite(value)) {
        throw new IllegalArgumentException("not a finite number: " + value);
      }
    }
    return values;
  }

  /** Refuses what has no logarithm. */
  static double[] positive(double[] values) {
    for (double value : finite(values)) {
      if (value <= 0) {
        throw new IllegalArgumentException("not positive: " + value);
      }
    }
    return values;
  }

  /** Refuses weights that are not finite, below zero, or all zero (none at all is let through). */
  static double[] weights(double[] weights) {
    double sum = 0;
    for (double weight : finite(weights)) {
      if (weight < 0) {
        throw new IllegalArgumentException("negative weight: " + weight);
      }
      sum += weight;
    }
    if (weights.length > 0 && sum <= 0) {
      throw new IllegalArgumentException("all weights are zero");
    }
    return weights;
  }

  /** Refuses a probability outside [0, 1]. */
  static double probability(double p) {
    if (!(p >= 0 && p <= 1)) {
      throw new IllegalArgumentException("not a probability: " + p);
    }
    return p;
  }

  /** Refuses a confidence level outside (0, 1). */
  static double level(double level) {
    if (!(level > 0 && level < 1)) {
      throw new IllegalArgumentException("not a level between 0 and 1: " + level);
    }
    return level;
  }

  /** Refuses arrays of different length. */
  static void sameLength(int a, int b) {
    if (a != b) {
      throw new IllegalArgumentException("lengths differ: " + a + " and " + b);
    }
  }

  /** Natural logarithms of positive values, in a new array. */
  static double[] logs(double[] values) {
    double[] logs = positive(values).clone();
    for (int i = 0; i < logs.length; i++) {
      logs[i] = Math.log(logs[i]);
    }
    return logs;
  }
}
