package club.emberwell.laser.dose;

/**
 * One quantity of two machines side by side.
 *
 * @param name in words
 * @param unit UCUM unit, empty for a bare number
 * @param from on the machine the settings come from; null = not known
 * @param to on the reader's machine; null = not known
 */
public record Comparison(String name, String unit, Double from, Double to) {
  /** Theirs to mine as to/from; null where one is not known or zero. */
  public Double ratio() {
    return from == null || to == null || from == 0 ? null : Double.valueOf(to / from);
  }

  /** True where both are known and their ratio lies within 1/factor to factor. */
  public boolean within(double factor) {
    Double ratio = ratio();
    // the tiny slack keeps an exact factor of two inside in binary arithmetic
    return ratio != null && ratio >= 1 / factor - 1e-9 && ratio <= factor + 1e-9;
  }
}
