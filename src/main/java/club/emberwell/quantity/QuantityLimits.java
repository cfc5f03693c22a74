package club.emberwell.quantity;

import java.math.BigDecimal;
import java.math.MathContext;

/**
 * Every bound of this package, in one place. What is plausible for a laser is decided elsewhere.
 */
final class QuantityLimits {
  /** Longest text read, in UTF-16 units. */
  static final int TEXT = 64;

  /** Longest UCUM code read. */
  static final int UNIT_CODE = 32;

  /** Most digits, and largest scale either way, of a number in the structured form. */
  static final int DIGITS = 64;

  /** Stored values: exact up to this precision, rounded beyond it. */
  static final MathContext STORED = MathContext.DECIMAL128;

  static final BigDecimal LARGEST = new BigDecimal("1e15");
  static final BigDecimal SMALLEST = new BigDecimal("1e-15");
  static final BigDecimal WHOLE_PERCENT = new BigDecimal(100);

  /** Significant digits of a value that was computed, as shown to people. */
  static final int SHOWN_DIGITS = 4;

  private QuantityLimits() {}
}
