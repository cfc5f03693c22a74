package club.emberwell.stats;

/**
 * Many values of equal variance drawn toward their common mean. Source: Efron &amp; Morris, JASA 70
 * (1975) 311-319, formula with k - 3; never past the mean (positive part).
 *
 * @param mean the common mean
 * @param factor what is left of each distance from it, 0 to 1
 * @param values shrunken, in the order given
 */
public record JamesStein(double mean, double factor, double[] values) {

  /**
   * The estimates; below 4 values nothing is gained and nothing is changed.
   *
   * @param values finite
   * @param variance of each value, positive
   */
  public static JamesStein of(double[] values, double variance) {
    Checked.positive(new double[] {variance});
    double mean = Summary.mean(values);
    double squares = 0;
    for (double value : values) {
      squares += (value - mean) * (value - mean);
    }
    double factor =
        values.length < 4
            ? 1
            : squares == 0 ? 0 : Math.max(0, 1 - (values.length - 3) * variance / squares);
    double[] shrunk = values.clone();
    for (int i = 0; i < shrunk.length; i++) {
      shrunk[i] = mean + factor * (shrunk[i] - mean);
    }
    return new JamesStein(mean, factor, shrunk);
  }
}
