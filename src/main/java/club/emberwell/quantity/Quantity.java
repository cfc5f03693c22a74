package club.emberwell.quantity;

import java.math.BigDecimal;

/**
 * A value with its unit, as stored and as written.
 *
 * @param kind what it measures
 * @param value in the kind's canonical unit; exact where the decimal ends, else 34 digits
 * @param written what was typed, unchanged
 */
public record Quantity(QuantityKind kind, BigDecimal value, String written) {
  public double doubleValue() {
    return value.doubleValue();
  }
}
