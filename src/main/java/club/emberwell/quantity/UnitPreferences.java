package club.emberwell.quantity;

import java.util.Map;

/**
 * How one reader wants numbers.
 *
 * @param units chosen unit (UCUM) by dimension; canonical where missing
 */
public record UnitPreferences(Map<Dimension, String> units) {
  public UnitPreferences {
    units = Map.copyOf(units);
  }

  public static UnitPreferences metric() {
    return new UnitPreferences(Map.of());
  }
}
