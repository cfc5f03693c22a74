package club.emberwell.stats;

/**
 * What is known of both edges of one machine's window before it tried anything: normal on ln dose,
 * edge = edge of a typical member + how the machine differs (the same for both edges) + error.
 *
 * @param lower ln dose between too little and right
 * @param upper ln dose between right and too much, above {@code lower}
 * @param lowerError standard error of {@code lower}, with what an edge differs by alone
 * @param upperError the same of {@code upper}
 * @param differ standard deviation of how machines differ
 */
public record EdgePrior(
    double lower, double upper, double lowerError, double upperError, double differ) {
  /** What an edge of one machine differs by besides the machine's own factor (own guess). */
  public static final double ALONE = 0.1;

  /** Half of the width of a window nobody knows: it spans a factor of 2.5 (own guess). */
  private static final double HALF = Math.log(2.5) / 2;

  /** How far its edges may lie from there, each alone and both together (own guess). */
  private static final double WEAK_ALONE = 0.4;

  private static final double WEAK = 0.7;

  public EdgePrior {
    Checked.finite(new double[] {lower, upper});
    Checked.positive(new double[] {lowerError, upperError});
    if (!(lower < upper) || !(differ >= 0)) {
      throw new IllegalArgumentException("not a window: " + lower + " to " + upper);
    }
  }

  /**
   * Where no window is known: a wide guess round a dose.
   *
   * @param log ln dose somewhere inside
   */
  public static EdgePrior weak(double log) {
    return new EdgePrior(log - HALF, log + HALF, WEAK_ALONE, WEAK_ALONE, WEAK);
  }

  /** The same for a machine whose factor is known. */
  public EdgePrior moved(double log, double error) {
    return new EdgePrior(lower + log, upper + log, lowerError, upperError, error);
  }

  /** Log density up to a constant, however the edges lie to each other. */
  double logDensity(double a, double b) {
    double x = a - lower;
    double y = b - upper;
    double common = differ * differ;
    double xx = lowerError * lowerError + common;
    double yy = upperError * upperError + common;
    double determinant = xx * yy - common * common;
    return -(yy * x * x - 2 * common * x * y + xx * y * y) / (2 * determinant);
  }

  double lowerDeviation() {
    return Math.hypot(lowerError, differ);
  }

  double upperDeviation() {
    return Math.hypot(upperError, differ);
  }
}
