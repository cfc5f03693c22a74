package club.emberwell.stats;

/**
 * An own value drawn toward its parent's: w own + (1 - w) parent with w = tau2 / (tau2 + v). Shown
 * as a second line "borrowed from ..."; it never replaces the own value.
 *
 * <p>Source: best linear unbiased prediction, Raudenbush &amp; Bryk, Journal of Educational
 * Statistics 10 (1985) 75-98; Robinson, Statistical Science 6 (1991) 15-51.
 *
 * @param value the shrunken value
 * @param error its standard error, with the parent's own error in it
 * @param weightOnOwn 0 to 1
 */
public record Shrinkage(double value, double error, double weightOnOwn) {

  /**
   * One value and its parent.
   *
   * @param own the own value
   * @param variance its squared standard error, positive
   * @param parent mean of the parent
   * @param parentError standard error of that mean
   * @param tau2 variance between the parent's children, 0 or more
   */
  public static Shrinkage of(
      double own, double variance, double parent, double parentError, double tau2) {
    Checked.finite(new double[] {own, parent, parentError, tau2});
    Checked.positive(new double[] {variance});
    if (tau2 < 0) {
      throw new IllegalArgumentException("negative variance: " + tau2);
    }
    double weight = tau2 / (tau2 + variance);
    double rest = 1 - weight;
    double error = Math.sqrt(weight * variance + rest * rest * parentError * parentError);
    return new Shrinkage(weight * own + rest * parent, error, weight);
  }

  /** One value and the analysis of its parent's children. */
  public static Shrinkage of(double own, double variance, RandomEffects parent) {
    return of(own, variance, parent.mean(), parent.error(), parent.tau2());
  }
}
