package club.emberwell.api.view;

import club.emberwell.quantity.QuantityKind;
import club.emberwell.quantity.WrittenQuantity;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.math.BigDecimal;
import java.math.MathContext;
import org.jspecify.annotations.Nullable;

/**
 * A quantity: {@code {"value": 304.8, "unit": "mm/s", "written": "12 in/s"}}.
 *
 * @param value in the kind's canonical unit
 * @param unit UCUM code
 * @param written as typed; left out for what was computed
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record QuantityJson(BigDecimal value, String unit, @Nullable String written) {
  // What a double surely holds; hides the dust that binary arithmetic leaves behind.
  private static final MathContext SURE = new MathContext(15);

  /** A canonical value; null stays null. */
  public static QuantityJson of(QuantityKind kind, Double value) {
    return of(kind.canonicalUnit(), value);
  }

  /** A computed value in a unit that no kind has. */
  public static QuantityJson of(String unit, Double value) {
    return value == null ? null : new QuantityJson(number(value), unit, null);
  }

  /** A canonical value beside what was typed. */
  public static QuantityJson of(QuantityKind kind, Double value, WrittenQuantity written) {
    return value == null
        ? null
        : new QuantityJson(
            number(value), kind.canonicalUnit(), written == null ? null : written.typed());
  }

  /** A number without unit; null stays null. */
  public static BigDecimal number(Double value) {
    if (value == null || !Double.isFinite(value)) {
      return null;
    }
    BigDecimal plain = BigDecimal.valueOf(value).round(SURE).stripTrailingZeros();
    return plain.scale() < 0 ? plain.setScale(0) : plain;
  }
}
