package club.emberwell.quantity;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Numbers that a person can set: multiples of 1, 2 or 5 times a power of ten. */
public final class RoundNumber {
  private static final double[] STEPS = {5, 2, 1};

  private RoundNumber() {}

  /** The nearest multiple of {@link #step}. */
  public static double near(double value, double most) {
    return times(Math.round(value / step(most)), most);
  }

  /** The next multiple at or below. */
  public static double below(double value, double most) {
    return times(Math.floor(value / step(most) + 1e-9), most);
  }

  /** The next multiple at or above. */
  public static double above(double value, double most) {
    return times(Math.ceil(value / step(most) - 1e-9), most);
  }

  /** A number to so many significant digits, half away from zero. */
  public static double significant(double value, int digits) {
    return BigDecimal.valueOf(value)
        .round(new MathContext(digits, RoundingMode.HALF_UP))
        .doubleValue();
  }

  /**
   * The largest step of 1, 2 or 5 times a power of ten.
   *
   * @param most that is not more than this, positive
   */
  public static double step(double most) {
    int exponent = exponent(most);
    double decade = Math.pow(10, exponent);
    for (double step : STEPS) {
      if (step * decade <= most * (1 + 1e-12)) {
        return step * decade;
      }
    }
    return decade;
  }

  private static int exponent(double most) {
    return (int) Math.floor(Math.log10(most) + 1e-12);
  }

  // by whole numbers, so that 0.1 stays 0.1
  private static double times(double count, double most) {
    int exponent = exponent(most);
    double steps = count * Math.round(step(most) / Math.pow(10, exponent));
    return exponent < 0 ? steps / Math.pow(10, -exponent) : steps * Math.pow(10, exponent);
  }
}
