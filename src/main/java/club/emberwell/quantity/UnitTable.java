package club.emberwell.quantity;

import java.text.Normalizer;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * The units we know and how people spell them, as {@link UnitFile} and the data files beside this
 * class list them.
 */
final class UnitTable {
  private static final UnitFile FILE = UnitFile.read();
  private static final Pattern MARKS = Pattern.compile("\\p{M}+");
  private static final Map<Dimension, Map<String, String>> LABELS = new EnumMap<>(Dimension.class);
  private static final Map<String, Set<String>> WHOLE = new HashMap<>();
  private static final Map<String, Set<String>> WORDS = new HashMap<>();
  private static final Map<Dimension, Map<String, List<String>>> ASKED =
      new EnumMap<>(Dimension.class);

  /** Starts a spelling whose case matters. */
  private static final String STRICT = "!";

  private static final Map<QuantityKind, List<UnitChoice>> CHOICES =
      new EnumMap<>(QuantityKind.class);

  static {
    for (Dimension dimension : Dimension.values()) {
      LABELS.put(dimension, new LinkedHashMap<>());
      ASKED.put(dimension, new HashMap<>());
    }
    FILE.units().forEach((code, units) -> units.forEach(unit -> addUnit(Dimension.of(code), unit)));
    LABELS.get(Dimension.SPACING).putAll(LABELS.get(Dimension.LENGTH));
    FILE.atoms().forEach(atom -> atom.spelled().forEach(text -> add(WORDS, text, atom.ucum())));
    DataLines.read("asked.txt").forEach(UnitTable::addAsked);
    DataLines.read("choices.txt").forEach(UnitTable::addChoices);
  }

  private UnitTable() {}

  static UnitFile file() {
    return FILE;
  }

  static boolean knows(Dimension dimension, String code) {
    return LABELS.get(dimension).containsKey(code);
  }

  static boolean knowsAnywhere(String code) {
    return LABELS.values().stream().anyMatch(units -> units.containsKey(code));
  }

  static String label(Dimension dimension, String code) {
    return LABELS.get(dimension).get(code);
  }

  /** What may stand between a unit and what it is counted by, as words and signs. */
  static List<String> per() {
    return FILE.per().values().stream().flatMap(List::stream).distinct().toList();
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
    List<String> strict = ASKED.get(dimension).get(STRICT + spelling);
    return strict != null
        ? strict
        : ASKED.get(dimension).getOrDefault(spelling.toLowerCase(Locale.ROOT), List.of());
  }

  static List<UnitChoice> choices(QuantityKind kind) {
    return CHOICES.get(kind);
  }

  private static Set<String> find(Map<String, Set<String>> map, String spelling) {
    Set<String> strict = map.get(STRICT + spelling);
    return strict != null ? strict : map.getOrDefault(spelling.toLowerCase(Locale.ROOT), Set.of());
  }

  private static void addUnit(Dimension dimension, UnitFile.Unit unit) {
    String code = unit.ucum();
    LABELS.get(dimension).put(code, unit.label());
    add(WHOLE, STRICT + code, code);
    add(WHOLE, STRICT + NormalText.of(unit.label()).orElseThrow(), code);
    unit.spelled().forEach(spelling -> add(WHOLE, spelling, code));
  }

  // Accents are often left out.
  private static void add(Map<String, Set<String>> map, String spelling, String meaning) {
    String key = spelling.startsWith(STRICT) ? spelling : spelling.toLowerCase(Locale.ROOT);
    String bare = MARKS.matcher(Normalizer.normalize(key, Normalizer.Form.NFD)).replaceAll("");
    for (String each : key.equals(bare) ? List.of(key) : List.of(key, bare)) {
      map.computeIfAbsent(each, k -> new LinkedHashSet<>()).add(meaning);
    }
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
