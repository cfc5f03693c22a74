package club.emberwell.quantity;

import java.math.BigDecimal;
import java.math.BigInteger;
import org.hipparchus.fraction.BigFraction;

/** Fractions and decimals into each other, losing nothing that a decimal can hold. */
final class ExactNumbers {
  private ExactNumbers() {}

  static BigFraction fraction(BigDecimal value) {
    BigInteger unscaled = value.unscaledValue();
    return value.scale() >= 0
        ? new BigFraction(unscaled, BigInteger.TEN.pow(value.scale()))
        : new BigFraction(unscaled.multiply(BigInteger.TEN.pow(-value.scale())), BigInteger.ONE);
  }

  /** Exact where the decimal ends within the stored precision, else rounded to it, half even. */
  static BigDecimal decimal(BigFraction value) {
    return plain(
        new BigDecimal(value.getNumerator())
            .divide(new BigDecimal(value.getDenominator()), QuantityLimits.STORED));
  }

  static boolean endsAsDecimal(BigFraction value) {
    return fraction(decimal(value)).equals(value);
  }

  /** Without trailing zeros and without an exponent. */
  static BigDecimal plain(BigDecimal value) {
    BigDecimal stripped = value.stripTrailingZeros();
    return stripped.scale() < 0 ? stripped.setScale(0) : stripped;
  }
}
