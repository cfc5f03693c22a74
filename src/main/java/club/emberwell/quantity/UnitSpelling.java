package club.emberwell.quantity;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.BinaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * From what people write after the number to UCUM codes: "inches per minute", "J/mm^2", "mm s-1".
 */
final class UnitSpelling {
  /** What a spelling came to. */
  enum Outcome {
    KNOWN,
    AMBIGUOUS,
    OTHER_DIMENSION,
    UNKNOWN
  }

  /**
   * @param codes the unit where it is known, the possible ones where it is not clear; else empty
   */
  record Match(Outcome outcome, List<String> codes) {}

  private static final Pattern PER =
      Pattern.compile(
          UnitTable.per().stream()
              .map(word -> word.equals("/") ? word : "\\b" + word + "\\b")
              .collect(Collectors.joining("|", "(?iU)\\s*(?:", ")\\s*")));
  private static final Pattern GOING_ON = Pattern.compile(PER.pattern() + "|\\s*[·⋅*^]");
  private static final Pattern NEGATIVE_POWER =
      Pattern.compile("(.*?)[ ·⋅.*]*([\\p{L}\"]+)(?:\\^|\\*\\*)?-([123])");
  private static final Pattern LEADING_POWER =
      Pattern.compile("(?iu)(sq|square|кв|cu|cubic|куб)\\.?\\s*(\\S+)");
  private static final Set<String> CUBE = Set.of("cu", "cubic", "куб");
  private static final Pattern TRAILING_POWER =
      Pattern.compile("(?i)(\\S+?)\\s*(?:(?:\\^|\\*\\*)?([23])|(squared|cubed))");

  private UnitSpelling() {}

  /** {@code text} is normalised and not empty. */
  static Match read(Dimension dimension, String text) {
    List<String> asked = UnitTable.asked(dimension, text);
    if (!asked.isEmpty()) {
      return new Match(Outcome.AMBIGUOUS, asked);
    }
    Set<String> codes = codes(text);
    List<String> here = codes.stream().filter(c -> UnitTable.knows(dimension, c)).toList();
    if (here.size() == 1) {
      return new Match(Outcome.KNOWN, here);
    }
    if (here.size() > 1) {
      return new Match(Outcome.AMBIGUOUS, here);
    }
    for (String code : codes) {
      List<String> askedByCode = UnitTable.asked(dimension, code);
      if (!askedByCode.isEmpty()) {
        return new Match(Outcome.AMBIGUOUS, askedByCode);
      }
    }
    boolean elsewhere = codes.stream().anyMatch(UnitTable::knowsAnywhere);
    return new Match(elsewhere ? Outcome.OTHER_DIMENSION : Outcome.UNKNOWN, List.of());
  }

  /** Whether the text goes on with what would make another unit of the one before it. */
  static boolean goesOn(String text) {
    return GOING_ON.matcher(text).lookingAt();
  }

  /** Whether the first word is a unit or a part of one. */
  static boolean startsWithUnit(String text) {
    return !atom(text.strip().split("[ ,;:()]", 2)[0]).isEmpty();
  }

  private static Set<String> codes(String text) {
    String withSlash = negativePower(text).orElse(text);
    for (String spelling : List.of(text, withSlash)) {
      Set<String> whole = UnitTable.whole(spelling);
      if (!whole.isEmpty()) {
        return whole;
      }
    }
    String[] parts = PER.split(withSlash, -1);
    if (parts.length == 1) {
      return powers(parts[0]);
    }
    if (parts.length != 2) {
      return Set.of();
    }
    Set<String> below = powers(parts[1]);
    if (parts[0].isBlank()) {
      return combine(Set.of("{line}"), below, (a, b) -> a + "/" + b);
    }
    return combine(powers(parts[0]), below, (a, b) -> a + "/" + b);
  }

  private static Optional<String> negativePower(String text) {
    Matcher m = NEGATIVE_POWER.matcher(text);
    if (!m.matches()) {
      return Optional.empty();
    }
    String power = m.group(3).equals("1") ? "" : m.group(3);
    return Optional.of(m.group(1).strip() + "/" + m.group(2) + power);
  }

  private static Set<String> powers(String part) {
    String text = part.strip();
    Set<String> plain = atom(text);
    if (!plain.isEmpty()) {
      return plain;
    }
    Matcher leading = LEADING_POWER.matcher(text);
    if (leading.matches()) {
      boolean cube = CUBE.contains(leading.group(1).toLowerCase(Locale.ROOT));
      return raise(atom(leading.group(2)), cube ? "3" : "2");
    }
    Matcher trailing = TRAILING_POWER.matcher(text);
    if (trailing.matches()) {
      String digit = trailing.group(2);
      if (digit == null) {
        digit = trailing.group(3).equalsIgnoreCase("squared") ? "2" : "3";
      }
      return raise(atom(trailing.group(1)), digit);
    }
    return Set.of();
  }

  private static Set<String> atom(String word) {
    boolean dotted = word.length() > 1 && word.endsWith(".");
    return UnitTable.word(dotted ? word.substring(0, word.length() - 1) : word);
  }

  private static Set<String> raise(Set<String> atoms, String power) {
    return combine(
        atoms, Set.of(power), (a, p) -> a.equals("[ft_i]") && p.equals("3") ? "[cft_i]" : a + p);
  }

  private static Set<String> combine(Set<String> a, Set<String> b, BinaryOperator<String> join) {
    Set<String> all = new LinkedHashSet<>();
    a.forEach(left -> b.forEach(right -> all.add(join.apply(left, right))));
    return all;
  }
}
