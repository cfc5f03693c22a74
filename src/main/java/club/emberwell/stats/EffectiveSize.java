package club.emberwell.stats;

/**
 * How many equal observations a weighted set is worth: (sum w)^2 / sum w^2. Source: Kish, Survey
 * Sampling (1965), section 11.7.
 */
public final class EffectiveSize {
  private EffectiveSize() {}

  /** Kish's size; 0 of no weights. */
  public static double of(double[] weights) {
    double sum = 0;
    double squares = 0;
    for (double weight : Checked.weights(weights)) {
      sum += weight;
      squares += weight * weight;
    }
    return weights.length == 0 ? 0 : sum * sum / squares;
  }
}
