package club.emberwell.laser.dose;

import java.util.List;

/**
 * How a number comes about, for a page that opens it.
 *
 * @param name what is computed
 * @param unit UCUM unit, or empty for a bare number
 * @param text the formula in symbols
 * @param inputs the quantities that stand in it
 * @param source where it is published; says "from memory" where nobody opened the text here
 * @param caveats what to keep in mind beside the number
 */
public record Formula(
    String name,
    String unit,
    String text,
    List<Input> inputs,
    String source,
    List<String> caveats) {
  public Formula {
    inputs = List.copyOf(inputs);
    caveats = List.copyOf(caveats);
  }

  /**
   * One quantity of a formula.
   *
   * @param symbol as in the formula's text
   * @param name in words
   * @param value in that unit; null where it was not given
   * @param unit UCUM unit, or empty for a bare number
   */
  public record Input(String symbol, String name, Double value, String unit) {}
}
