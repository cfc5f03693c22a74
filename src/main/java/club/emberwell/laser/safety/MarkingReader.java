package club.emberwell.laser.safety;

import club.emberwell.laser.safety.En207.Condition;
import club.emberwell.remark.Reading;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads a line as it is printed on glasses: an optical density or letters with a scale number, and
 * the wavelengths they hold for, in either order. Forms: "OD 6+ @ 900-1070 nm" (ANSI Z136.7, from
 * memory), "D 1064 LB6" and "180-315 D LB10" (EN 207). Pure.
 */
public final class MarkingReader {
  /** Characters of a line; longer ones are no marking. */
  public static final int LINE = 200;

  /** Nothing is printed outside of these, nm: where EN 207 begins and ends. */
  private static final double SHORTEST_NM = 180;

  private static final double LONGEST_NM = 1e6;

  /** A pair of glasses that lets less through cannot be measured (own bound, no source). */
  private static final double HIGHEST_DENSITY = 15;

  private static final int HIGHEST_SCALE = 10;

  /** Three digits behind a comma are the next number, not decimals. */
  private static final String NUMBER = "\\d{1,7}(?:[.,]\\d{1,2}(?!\\d))?";

  /** What a line is made of; the first that fits counts. */
  private static final Pattern PART =
      Pattern.compile(
          "(?<skip>[\\s@:;,+&|()/]+|AND|AT|FOR|NM)"
              + "|(?<other>CE|UKCA|EN\\s?207(?::\\d{4})?|ANSI|Z136(?:\\.\\d)?|VLT\\s*:?\\s*"
              + NUMBER
              + "\\s*%?)"
              + "|OD\\s*[=:]?\\s*(?:>=|≥|>)?\\s*(?<od>"
              + NUMBER
              + ")\\s*\\+?"
              + "|LB\\s*(?<lb>\\d{1,3})"
              + "|(?<letters>[DIRM]{1,4})(?![A-Z])"
              + "|>?\\s*(?<from>"
              + NUMBER
              + ")\\s*(?<fromUnit>NM|UM|MICRON)?(?:\\s*(?:-|TO)\\s*>?(?<to>"
              + NUMBER
              + ")\\s*(?<unit>NM|UM|MICRON)?)?");

  private static final Pattern WORD = Pattern.compile("[^\\s,;]+");

  private MarkingReader() {}

  /** Where a protection holds. */
  private record Range(double from, double to) {}

  /** How much it protects; either is null. */
  private record Strength(Double density, Set<Condition> letters, Integer scale) {}

  /** Every protection a line claims; refused with one remark that says what is wrong. */
  public static Reading<List<Protection>> line(String written) {
    try {
      Parts parts = new Parts();
      parts.take(tidy(written));
      List<Protection> read = parts.joined();
      return parts.leftOut.isEmpty()
          ? Reading.of(written, read)
          : Reading.of(
              written,
              read,
              Remark.info(
                  RemarkId.WORDS_LEFT_OUT, "", "Left out: " + String.join(", ", parts.leftOut)));
    } catch (Unreadable e) {
      return Reading.refused(
          written, Remark.error(RemarkId.MARKING_UNREADABLE, "", e.getMessage()));
    }
  }

  private static String tidy(String written) {
    return Normalizer.normalize(written, Normalizer.Form.NFKC)
        .replace('μ', 'u')
        .replaceAll("[\\u2010-\\u2015\\u2212]", "-")
        .toUpperCase(Locale.ROOT)
        .strip();
  }

  /** Says to a person why a line cannot be read. */
  private static final class Unreadable extends Exception {
    private static final long serialVersionUID = 1;

    Unreadable(String why) {
      super(why);
    }
  }

  /** A line while it is read, from left to right. */
  private static final class Parts {
    /** Wavelengths that stand together, then what stands together for them, and so on. */
    private final List<List<Object>> blocks = new ArrayList<>();

    private final List<String> leftOut = new ArrayList<>();
    private Set<Condition> letters;
    private boolean lettersEnded;

    void take(String line) throws Unreadable {
      Matcher part = PART.matcher(line);
      int at = 0;
      while (at < line.length()) {
        part.region(at, line.length());
        if (!part.lookingAt() || part.end() == at) {
          throw unknown(line.substring(at));
        }
        part(part);
        at = part.end();
      }
      if (letters != null) {
        throw new Unreadable(
            "The letters " + named(letters) + " have no LB number, such as D 1064 LB6.");
      }
    }

    private void part(Matcher part) throws Unreadable {
      if (part.group("other") != null) {
        leftOut.add(part.group("other").strip());
      } else if (part.group("od") != null) {
        add(new Strength(density(part.group("od")), Set.of(), null));
      } else if (part.group("lb") != null) {
        add(scale(Integer.parseInt(part.group("lb"))));
      } else if (part.group("letters") != null) {
        letters(part.group("letters"));
      } else if (part.group("from") != null) {
        lettersEnded = letters != null;
        add(range(part));
      }
    }

    /** "DIR" and "D I R" are the same; those behind a wavelength belong to another number. */
    private void letters(String more) throws Unreadable {
      if (letters == null) {
        letters = EnumSet.noneOf(Condition.class);
      } else if (lettersEnded) {
        throw new Unreadable("The letters " + named(letters) + " have no LB number.");
      }
      more.chars().forEach(c -> letters.add(condition((char) c)));
    }

    private static Condition condition(char letter) {
      return Condition.valueOf(String.valueOf(letter));
    }

    private static String named(Set<Condition> letters) {
      return String.join("", letters.stream().map(Condition::name).toList());
    }

    private static Unreadable unknown(String rest) {
      Matcher word = WORD.matcher(rest);
      String what = word.find() ? word.group() : rest;
      if (what.equals("OD") || what.equals("LB")) {
        return new Unreadable("%s needs a number behind it, such as %s 6.".formatted(what, what));
      }
      return new Unreadable(
          "“%s” is not understood. Write as OD 6+ @ 900-1070 nm, or as D 1064 LB6."
              .formatted(what));
    }

    private static double density(String text) throws Unreadable {
      double density = number(text);
      if (density <= 0 || density > HIGHEST_DENSITY) {
        throw new Unreadable(
            "An optical density lies above 0 and not above 15: %s does not.".formatted(text));
      }
      return density;
    }

    private Strength scale(int number) throws Unreadable {
      if (letters == null) {
        throw new Unreadable("LB%d needs its letters in front: D, I, R or M.".formatted(number));
      }
      if (number < 1 || number > HIGHEST_SCALE) {
        throw new Unreadable("Scale numbers run from LB1 to LB10: LB%d is none.".formatted(number));
      }
      Strength scale = new Strength(null, letters, number);
      letters = null;
      lettersEnded = false;
      return scale;
    }

    private static Range range(Matcher part) throws Unreadable {
      String unit = part.group("unit") == null ? part.group("fromUnit") : part.group("unit");
      String first = part.group("fromUnit") == null ? unit : part.group("fromUnit");
      double from = nm(part.group("from"), first);
      double to = part.group("to") == null ? from : nm(part.group("to"), unit);
      if (from > to) {
        throw new Unreadable(
            "The wavelengths run backwards: %s to %s."
                .formatted(part.group("from"), part.group("to")));
      }
      return new Range(from, to);
    }

    private static double nm(String text, String unit) throws Unreadable {
      double nm = number(text) * (unit == null || unit.equals("NM") ? 1 : 1000);
      if (nm < SHORTEST_NM || nm > LONGEST_NM) {
        throw new Unreadable(
            "%s is no wavelength here: from 180 nm to 1 mm, such as 1064 nm or 10.6 µm."
                .formatted(text));
      }
      return nm;
    }

    private static double number(String text) {
      return Double.parseDouble(text.replace(',', '.'));
    }

    private void add(Object one) {
      List<Object> last = blocks.isEmpty() ? null : blocks.get(blocks.size() - 1);
      if (last == null || last.get(0) instanceof Range != one instanceof Range) {
        last = new ArrayList<>();
        blocks.add(last);
      }
      last.add(one);
    }

    /** Each block of wavelengths with the block of numbers that goes with it. */
    List<Protection> joined() throws Unreadable {
      if (blocks.stream().noneMatch(block -> block.get(0) instanceof Range)) {
        throw new Unreadable("The wavelengths are missing, such as 900-1070 nm.");
      }
      if (blocks.stream().noneMatch(block -> block.get(0) instanceof Strength)) {
        throw new Unreadable("What it protects is missing, such as OD 6 or D LB6.");
      }
      if (blocks.size() % 2 != 0) {
        throw new Unreadable("Write each range of wavelengths with its number on its own line.");
      }
      List<Protection> all = new ArrayList<>();
      for (int i = 0; i < blocks.size(); i += 2) {
        boolean rangeFirst = blocks.get(i).get(0) instanceof Range;
        for (Object range : blocks.get(rangeFirst ? i : i + 1)) {
          for (Object strength : blocks.get(rangeFirst ? i + 1 : i)) {
            all.add(protection((Range) range, (Strength) strength));
          }
        }
      }
      return all;
    }

    private static Protection protection(Range range, Strength strength) {
      return new Protection(
          range.from(), range.to(), strength.density(), strength.letters(), strength.scale());
    }
  }
}
