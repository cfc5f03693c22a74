package club.emberwell.quantity;

import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The units and the number style a member wants to see. Only units of {@link #choices} get in.
 *
 * @param units UCUM code by kind, where it differs from the default
 * @param style how numbers are written for this member, and how a single mark with three digits is
 *     read on this member's pages
 */
public record UnitPreferences(Map<QuantityKind, String> units, NumberStyle style) {
  private static final UnitPreferences METRIC = new UnitPreferences(Map.of(), NumberStyle.ANY);
  private static final String STYLE_KEY = "style";

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
          if (!code.equals(choices(kind).get(0).code())) {
            kept.put(kind, code);
          }
        });
    units = Map.copyOf(kept);
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

  /** For storing: kind name to UCUM code, and the number style under {@code style}. */
  public Map<String, String> toMap() {
    Map<String, String> map = new LinkedHashMap<>();
    for (QuantityKind kind : QuantityKind.values()) {
      if (units.containsKey(kind)) {
        map.put(kind.name(), units.get(kind));
      }
    }
    if (style != NumberStyle.ANY) {
      map.put(STYLE_KEY, style.name());
    }
    return map;
  }

  /** From {@link #toMap}; what is no longer a choice falls back to the default. */
  public static UnitPreferences fromMap(Map<String, String> map) {
    Map<QuantityKind, String> units = new EnumMap<>(QuantityKind.class);
    for (QuantityKind kind : QuantityKind.values()) {
      String code = map.get(kind.name());
      if (code != null && isChoice(kind, code)) {
        units.put(kind, code);
      }
    }
    NumberStyle style = NumberStyle.ANY;
    for (NumberStyle each : NumberStyle.values()) {
      if (each.name().equals(map.get(STYLE_KEY))) {
        style = each;
      }
    }
    return new UnitPreferences(units, style);
  }

  /** {@link #toMap} on one line: {@code SPEED=[in_i]/s;style=DECIMAL_COMMA}; may be empty. */
  public String compact() {
    StringBuilder out = new StringBuilder();
    toMap().forEach((key, value) -> out.append(out.isEmpty() ? "" : ";").append(key + "=" + value));
    return out.toString();
  }

  /** From {@link #compact}; parts that can't be read are left out. */
  public static UnitPreferences parse(String compact) {
    Map<String, String> map = new LinkedHashMap<>();
    for (String part : compact.split(";", QuantityKind.values().length + 2)) {
      int equals = part.indexOf('=');
      if (equals > 0) {
        map.put(part.substring(0, equals), part.substring(equals + 1));
      }
    }
    return fromMap(map);
  }
}
