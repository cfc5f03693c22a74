package club.emberwell.quantity;

/**
 * A unit a member may choose for a kind of quantity.
 *
 * @param code UCUM, e.g. {@code [in_i]/min}; what is stored
 * @param label what people see, e.g. {@code in/min}; {@link QuantityReader} reads it
 * @param reciprocal true where more of this unit means less of the canonical one (lines per inch)
 */
public record UnitChoice(String code, String label, boolean reciprocal) {}
