package club.emberwell.quantity;

import java.math.BigDecimal;

/**
 * A quantity for JSON: {@code {"value": 304.8, "unit": "mm/s"}}.
 *
 * @param value canonical, no trailing zeros, no exponent
 * @param unit UCUM code of the kind's canonical unit
 */
public record CanonicalValue(BigDecimal value, String unit) {}
