package club.emberwell.quantity;

import org.hipparchus.fraction.BigFraction;

/**
 * From a unit to the canonical one, exactly.
 *
 * @param factor canonical units in one unit; for a reciprocal unit, inverse canonical units
 * @param reciprocal true for lines per length, whose canonical value is the spacing
 */
record Conversion(BigFraction factor, boolean reciprocal) {

  /** {@code value} must not be zero where the unit is reciprocal. */
  BigFraction toCanonical(BigFraction value) {
    BigFraction scaled = value.multiply(factor);
    return reciprocal ? scaled.reciprocal() : scaled;
  }

  BigFraction fromCanonical(BigFraction canonical) {
    return (reciprocal ? canonical.reciprocal() : canonical).divide(factor);
  }

  double fromCanonical(double canonical) {
    double value = reciprocal ? 1 / canonical : canonical;
    // Dividing by the shorter of factor and inverse keeps 60 in/min from becoming
    // 60.00000000000001.
    return value * factor.getDenominator().doubleValue() / factor.getNumerator().doubleValue();
  }
}
