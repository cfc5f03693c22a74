package club.emberwell.quantity;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * How a unit, or a part of one, may be written, as {@code shared/vocabulary/units.yaml} has it.
 *
 * @param label what people see
 * @param ucum its code
 * @param words its spellings
 */
public record UnitWords(String label, String ucum, List<Words> words) {
  /**
   * Spellings of one language.
   *
   * @param language ISO 639-1; empty for signs and what is written in several
   */
  public record Words(String language, List<String> spellings) {
    public String getText() {
      return String.join(", ", spellings);
    }
  }

  /** Parts first, then the whole units that have spellings of their own. */
  public static List<UnitWords> all() {
    UnitFile file = UnitTable.file();
    Stream<UnitFile.Unit> whole =
        file.units().values().stream().flatMap(List::stream).filter(u -> u.spellings() != null);
    return Stream.concat(file.atoms().stream(), whole).map(UnitWords::of).toList();
  }

  /** What stands between a unit and what it is counted by. */
  public static List<Words> per() {
    return words(UnitTable.file().per());
  }

  private static UnitWords of(UnitFile.Unit unit) {
    String label = unit.label() == null ? label(unit.ucum()) : unit.label();
    return new UnitWords(label, unit.ucum(), words(unit.spellings()));
  }

  private static String label(String atom) {
    return Stream.of(Dimension.values())
        .filter(dimension -> UnitTable.knows(dimension, atom))
        .map(dimension -> UnitTable.label(dimension, atom))
        .findFirst()
        .orElse(atom.replaceAll("[{}]", ""));
  }

  private static List<Words> words(Map<String, List<String>> spellings) {
    List<Words> words = new ArrayList<>();
    spellings.forEach(
        (language, texts) ->
            words.add(
                new Words(
                    language.length() == 2 ? language : "",
                    texts.stream().map(text -> text.replaceFirst("^!", "")).toList())));
    return words;
  }
}
