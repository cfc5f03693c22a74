package club.emberwell.quantity;

import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/** The units we know and how people spell them, as the data files beside this class list them. */
final class UnitTable {
  private static final Map<Dimension, Map<String, String>> LABELS = new EnumMap<>(Dimension.class);
  private static final Map<String, Set<String>> WHOLE = new HashMap<>();
  private static final Map<String, Set<String>> WORDS = new HashMap<>();
  private static final Map<Dimension, Map<String, List<String>>> ASKED =
      new EnumMap<>(Dimension.class);
  private static final Map<QuantityKind, List<UnitChoice>> CHOICES =
      new EnumMap<>(QuantityKind.class);

  static {
    for (Dimension dimension : Dimension.values()) {
      LABELS.put(dimension, new LinkedHashMap<>());
      ASKED.put(dimension, new HashMap<>());
    }
    DataLines.read("units.txt").forEach(UnitTable::addUnit);
    LABELS.get(Dimension.SPACING).putAll(LABELS.get(Dimension.LENGTH));
    DataLines.read("words.txt").forEach(UnitTable::addWords);
    DataLines.read("asked.txt").forEach(UnitTable::addAsked);
    DataLines.read("choices.txt").forEach(UnitTable::addChoices);
  }

  private UnitTable() {}

  static boolean knows(Dimension dimension, String code) {
    return LABELS.get(dimension).containsKey(code);
  }

  static boolean knowsAnywhere(String code) {
    return LABELS.values().stream().anyMatch(units -> units.containsKey(code));
  }

  static String label(Dimension dimension, String code) {
    return LABELS.get(dimension).get(code);
  }

  /** Codes that a whole spelling stands for; empty where it has to be taken apart. */
  static Set<String> whole(String spelling) {
    return find(WHOLE, spelling);
  }

  /** Atoms that one word stands for. */
  static Set<String> word(String spelling) {
    return find(WORDS, spelling);
  }

  /** Codes that a spelling known to be mistaken could have meant; empty where it is none. */
  static List<String> asked(Dimension dimension, String spelling) {
    List<String> strict = ASKED.get(dimension).get("!" + spelling);
    return strict != null
        ? strict
        : ASKED.get(dimension).getOrDefault(spelling.toLowerCase(Locale.ROOT), List.of());
  }

  static List<UnitChoice> choices(QuantityKind kind) {
    return CHOICES.get(kind);
  }

  private static Set<String> find(Map<String, Set<String>> map, String spelling) {
    Set<String> strict = map.get("!" + spelling);
    return strict != null ? strict : map.getOrDefault(spelling.toLowerCase(Locale.ROOT), Set.of());
  }

  private static void addUnit(List<String> cells) {
    String code = cells.get(1);
    LABELS.get(Dimension.valueOf(cells.get(0))).put(code, cells.get(2));
    add(WHOLE, "!" + code, code);
    add(WHOLE, "!" + NormalText.of(cells.get(2)).orElseThrow(), code);
    DataLines.items(cells.get(3)).forEach(spelling -> add(WHOLE, spelling, code));
  }

  private static void addWords(List<String> cells) {
    DataLines.items(cells.get(1)).forEach(spelling -> add(WORDS, spelling, cells.get(0)));
  }

  private static void add(Map<String, Set<String>> map, String spelling, String meaning) {
    map.computeIfAbsent(spelling, key -> new LinkedHashSet<>()).add(meaning);
  }

  private static void addAsked(List<String> cells) {
    Dimension dimension = Dimension.valueOf(cells.get(0));
    List<String> codes = DataLines.items(cells.get(2));
    codes.forEach(code -> requireKnown(dimension, code));
    ASKED.get(dimension).put(cells.get(1), codes);
  }

  private static void addChoices(List<String> cells) {
    QuantityKind kind = QuantityKind.valueOf(cells.get(0));
    Dimension dimension = kind.dimension();
    CHOICES.put(
        kind,
        DataLines.items(cells.get(1)).stream()
            .map(
                code -> {
                  requireKnown(dimension, code);
                  boolean reciprocal = UcumCodes.tabled(code, kind).reciprocal();
                  return new UnitChoice(code, label(dimension, code), reciprocal);
                })
            .toList());
  }

  private static void requireKnown(Dimension dimension, String code) {
    if (!knows(dimension, code)) {
      throw new IllegalStateException("no unit " + code + " in " + dimension);
    }
  }
}
