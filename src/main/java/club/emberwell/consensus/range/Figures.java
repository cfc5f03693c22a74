package club.emberwell.consensus.range;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Bare numbers in sentences. */
public final class Figures {
  private static final MathContext TWO = new MathContext(2, RoundingMode.HALF_UP);

  private Figures() {}

  /** Two significant digits: 1.6, 2.0, 13, 0.85. */
  public static String two(double value) {
    return Double.isInfinite(value)
        ? "very many"
        : BigDecimal.valueOf(value)
            .round(TWO)
            .setScale(decimals(value), RoundingMode.HALF_UP)
            .toPlainString();
  }

  private static int decimals(double value) {
    BigDecimal rounded = BigDecimal.valueOf(value).round(TWO);
    return Math.max(0, TWO.getPrecision() - 1 - exponent(rounded));
  }

  private static int exponent(BigDecimal value) {
    return value.precision() - value.scale() - 1;
  }

  public static String percent(double share) {
    return Math.round(share * 100) + " %";
  }
}
