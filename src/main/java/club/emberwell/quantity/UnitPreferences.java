package club.emberwell.quantity;

import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The units and the number style a member wants to see. Only units of {@link #choices} get in.
 *
 * @param units UCUM code by kind, where the member said one; a bare number is read in it on forms
 *     that show it
 * @param style how numbers are written for this member, and how a single mark with three digits is
 *     read on this member's pages
 */
public record UnitPreferences(Map<QuantityKind, String> units, NumberStyle style) {
  private static final UnitPreferences METRIC = new UnitPreferences(Map.of(), NumberStyle.ANY);

  /**
   * @throws IllegalArgumentException for a unit that is no choice of its kind
   */
  public UnitPreferences {
    Map<QuantityKind, String> kept = new EnumMap<>(QuantityKind.class);
    units.forEach(
        (kind, code) -> {
          if (!isChoice(kind, code)) {
            throw new IllegalArgumentException("no choice for " + kind + ": " + code);
          }
          kept.put(kind, code);
        });
    units = Map.copyOf(kept);
  }

  /** Whether the member said a unit for this kind, be it the default. */
  public boolean isStated(QuantityKind kind) {
    return units.containsKey(kind);
  }

  /** Nothing is assumed when reading; a decimal point when printing. */
  public UnitPreferences(Map<QuantityKind, String> units) {
    this(units, NumberStyle.ANY);
  }

  /** Millimetres, seconds, watts; numbers with a decimal point, nothing assumed when reading. */
  public static UnitPreferences metric() {
    return METRIC;
  }

  /** What a form offers for a kind, the default first. */
  public static List<UnitChoice> choices(QuantityKind kind) {
    return UnitTable.choices(kind);
  }

  public static boolean isChoice(QuantityKind kind, String code) {
    return choices(kind).stream().anyMatch(choice -> choice.code().equals(code));
  }

  /** The unit to show a kind in. */
  public UnitChoice unit(QuantityKind kind) {
    List<UnitChoice> choices = choices(kind);
    String code = units.getOrDefault(kind, choices.get(0).code());
    return choices.stream().filter(choice -> choice.code().equals(code)).findFirst().orElseThrow();
  }

  /**
   * The same with another unit for one kind.
   *
   * @throws IllegalArgumentException for a unit that is no choice of it
   */
  public UnitPreferences with(QuantityKind kind, String code) {
    Map<QuantityKind, String> changed = new EnumMap<>(QuantityKind.class);
    changed.putAll(units);
    changed.put(kind, code);
    return new UnitPreferences(changed, style);
  }

  public UnitPreferences with(NumberStyle other) {
    return new UnitPreferences(units, other);
  }

  /** For storing: UCUM code by code of the kind. */
  public Map<String, String> toMap() {
    Map<String, String> map = new LinkedHashMap<>();
    units.forEach((kind, code) -> map.put(kind.code(), code));
    return map;
  }

  /** From {@link #toMap}; what is no longer a choice falls back to the default. */
  public static UnitPreferences fromMap(Map<String, String> map) {
    Map<QuantityKind, String> units = new EnumMap<>(QuantityKind.class);
    for (QuantityKind kind : QuantityKind.values()) {
      String code = map.get(kind.code());
      if (code != null && isChoice(kind, code)) {
        units.put(kind, code);
      }
    }
    return new UnitPreferences(units);
  }
}
