package club.emberwell.quantity;

import java.math.BigDecimal;

/**
 * A quantity as it came in: either a text with its unit or a value and a UCUM code.
 *
 * @param text null when structured
 * @param value null when text
 * @param unit UCUM, null when text
 */
public record WrittenQuantity(String text, BigDecimal value, String unit) {
  public static WrittenQuantity of(String text) {
    return new WrittenQuantity(text, null, null);
  }

  /** As it was typed; a value with a code as both. */
  public String typed() {
    return text != null ? text : value.toPlainString() + " " + unit;
  }
}
