package club.emberwell.quantity;

import club.emberwell.quantity.Candidates.Amount;
import club.emberwell.remark.Reading;
import club.emberwell.remark.RemarkId;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** One text, normalised: first what is no single value, then a number and what follows it. */
final class TextReader {
  private static final Pattern SIGNED = Pattern.compile("([+-]?) ?([^+-].*)");
  private static final Pattern MINUS =
      Pattern.compile("(?iu)(?:minus|moins|menos|meno|минус) (?=[0-9.,\u066b])");
  private static final Pattern NUMBER_FIRST =
      Pattern.compile("([0-9.,\u066b' ]*[0-9](?:[eE][+-]?[0-9]{1,2}(?![0-9]))?)(.*)");
  private static final Pattern UNIT_FIRST =
      Pattern.compile(
          "([^0-9.,\u066b+-]*[^0-9.,\u066b+ :=-])\\.? ?[:=]? ?"
              + "([+-]?[0-9.,\u066b][0-9.,\u066b'/ ]*)");
  private static final Pattern LONG_EXPONENT = Pattern.compile("[eE][+-]?[0-9].*");
  private static final Pattern RANGE =
      Pattern.compile(
          "(?<low>[0-9][0-9.,\u066b' /]*?) ?(?<unit>(?![eE]-)[^0-9 .,~-][^0-9-]*?)?"
              + "(?: ?(?:-|~|\\.{2,}|to|bis) ?| (?:à|a|до|hasta) )(?<high>[0-9.,\u066b][^-]*)");
  private static final Pattern LIMIT =
      Pattern.compile(
          "(?iu)(?:[<>\\u2264\\u2265]=?"
              + "|(?:max|min|maximum|minimum|up to|at most|at least|under|over|below|above|mind"
              + "|höchstens|mindestens|unter|über|jusqu'à|hasta|fino a|до)\\b\\.?) ?(.+)");
  private static final Pattern ABOUT =
      Pattern.compile(
          "(?iu)([~\\u2248]=?|(?:ca|circa|about|around|approx|approximately|etwa|ungefähr|rund|env"
              + "|environ|aprox|около|примерно)\\b\\.?) ?(.+)");

  // What a value may hide behind: all else says by itself what is wrong.
  private static final Set<RemarkId> UNREAD =
      Set.of(RemarkId.NOT_A_NUMBER, RemarkId.UNIT_UNKNOWN, RemarkId.UNIT_OF_OTHER_DIMENSION);

  private final QuantityKind kind;
  private final NumberStyle style;
  private final Settling settling;

  TextReader(QuantityKind kind, NumberStyle style, Settling settling) {
    this.kind = kind;
    this.style = style;
    this.settling = settling;
  }

  /** {@code text} is normalised and not empty. */
  Reading<Quantity> read(String typed) {
    String text = MINUS.matcher(typed).replaceFirst("-");
    return hedged(text)
        .or(() -> new SpecialForms(kind, style, settling).read(text))
        .orElseGet(() -> plain(text));
  }

  private Reading<Quantity> plain(String text) {
    Reading<Quantity> read = signed(text);
    boolean unread = read.remarks().stream().anyMatch(r -> UNREAD.stream().anyMatch(r::is));
    return unread
        ? unitFirst(text).or(() -> new AmongWords(kind, settling, this).read(text)).orElse(read)
        : read;
  }

  private Optional<Reading<Quantity>> hedged(String text) {
    if (text.contains("±") || text.contains("+/-")) {
      return Optional.of(
          settling.refused(
              RemarkId.NOT_EXACT, "One value is needed, without its tolerance.", List.of()));
    }
    Matcher about = ABOUT.matcher(text);
    if (about.matches()) {
      Optional<Reading<Quantity>> found =
          sure(about.group(2)).map(one -> leaving(one, List.of(about.group(1))));
      return found.or(() -> Optional.of(inexact(about.group(2))));
    }
    Matcher limit = LIMIT.matcher(text);
    return limit.matches() ? Optional.of(inexact(limit.group(1))) : Optional.empty();
  }

  private Reading<Quantity> inexact(String value) {
    return settling.refused(
        RemarkId.NOT_EXACT,
        "One value is needed, without words or signs around it.",
        readable(List.of(value)));
  }

  /** What was read, and what was not. */
  Reading<Quantity> leaving(Sure found, List<String> words) {
    String detail = "Read as %s.".formatted(found.text());
    return words.isEmpty()
        ? settling.taken(found.quantity(), Settling.note(RemarkId.READ_AS, detail, found.text()))
        : settling.taken(
            found.quantity(),
            Settling.note(
                RemarkId.WORDS_LEFT_OUT,
                detail + " Left out: " + quoted(words) + ".",
                found.text()));
  }

  static String quoted(List<String> words) {
    return String.join(", ", words.stream().map(word -> "“" + word + "”").toList());
  }

  private Reading<Quantity> signed(String text) {
    Matcher m = SIGNED.matcher(text);
    if (!m.matches()) {
      return settling.notANumber();
    }
    String sign = m.group(1);
    String unsigned = m.group(2);
    return FractionText.read(unsigned)
        .map(found -> fraction(found, sign))
        .or(() -> range(unsigned, sign))
        .orElseGet(() -> number(unsigned, sign));
  }

  /** Neither range nor hedge, so that no text can make readings of readings of readings. */
  private Reading<Quantity> single(String text) {
    Matcher m = SIGNED.matcher(text);
    if (!m.matches()) {
      return settling.notANumber();
    }
    return new SpecialForms(kind, style, settling)
        .read(text)
        .or(() -> FractionText.read(m.group(2)).map(found -> fraction(found, m.group(1))))
        .orElseGet(() -> number(m.group(2), m.group(1)));
  }

  /**
   * A value nobody has to be asked about.
   *
   * @param text the value, written so that it is read so in any style
   */
  record Sure(String text, Quantity quantity) {}

  /** The text as one value with its unit. */
  Optional<Sure> sure(String text) {
    return clear(text)
        .map(quantity -> new Sure(unmistakable(text), quantity))
        .filter(found -> style == NumberStyle.ANY || isSureForAll(found))
        .filter(found -> found.text().length() <= QuantityLimits.TEXT);
  }

  private Optional<Quantity> clear(String text) {
    Reading<Quantity> read = single(text);
    return read.remarks().isEmpty() ? read.value() : Optional.empty();
  }

  private boolean isSureForAll(Sure found) {
    return new TextReader(kind, NumberStyle.ANY, settling)
        .clear(found.text())
        .filter(quantity -> quantity.value().equals(found.quantity().value()))
        .isPresent();
  }

  private String unmistakable(String text) {
    Matcher signed = SIGNED.matcher(text);
    if (!signed.matches() || FractionText.read(signed.group(2)).isPresent()) {
      return text;
    }
    Matcher m = NUMBER_FIRST.matcher(signed.group(2));
    if (!m.matches()) {
      return text;
    }
    return NumberText.read(m.group(1), style).stream()
        .findFirst()
        .map(n -> signed.group(1) + NumberText.unmistakable(n) + " " + m.group(2).strip())
        .orElse(text);
  }

  /** {@code kHz 20}. */
  private Optional<Reading<Quantity>> unitFirst(String text) {
    Matcher m = UNIT_FIRST.matcher(text);
    if (!m.matches()) {
      return Optional.empty();
    }
    return switch (UnitSpelling.read(kind.dimension(), m.group(1).strip()).outcome()) {
      case KNOWN, AMBIGUOUS -> Optional.of(single(m.group(2).strip() + " " + m.group(1).strip()));
      case OTHER_DIMENSION, UNKNOWN -> Optional.empty();
    };
  }

  private Reading<Quantity> number(String unsigned, String sign) {
    Matcher m = NUMBER_FIRST.matcher(unsigned);
    if (!m.matches()) {
      return settling.notANumber();
    }
    String unit = m.group(2).strip();
    if (LONG_EXPONENT.matcher(unit).matches()) {
      return settling.refused(RemarkId.OUT_OF_RANGE, "That number is out of any range.", List.of());
    }
    List<Amount> numbers = NumberText.read(m.group(1), style).stream().map(Amount::of).toList();
    return numbers.isEmpty() || unit.startsWith(".") || unit.startsWith(",")
        ? settling.notANumber()
        : settling.withUnit(signs(numbers, sign), unit);
  }

  private Reading<Quantity> fraction(FractionText.Found found, String sign) {
    if (found.numbers().isEmpty()) {
      return settling.notANumber();
    }
    boolean ratio = kind.dimension() == Dimension.RATIO;
    if (kind.dimension().isLength() || (ratio ? found.mixed() : found.isUsual())) {
      return settling.withUnit(signs(found.numbers(), sign), found.unit());
    }
    Stream<String> shares = ratio ? found.numbers().stream().map(Amount::spelled) : Stream.empty();
    Stream<String> decimals =
        found.numbers().stream()
            .filter(a -> ExactNumbers.endsAsDecimal(a.value()))
            .map(a -> ExactNumbers.decimal(a.value()))
            .map(d -> sign + NumberText.unmistakable(d) + " " + found.unit());
    Stream<String> either =
        ratio ? Stream.empty() : found.sides().stream().map(n -> sign + n + " " + found.unit());
    return settling.refused(
        RemarkId.FRACTION_NOT_HERE,
        "Is this a fraction or two values? Write a decimal number.",
        readable(Stream.of(shares, decimals, either).flatMap(texts -> texts).toList()));
  }

  /** Low and high are offered, never a mean: the writer meant neither to be averaged. */
  private Optional<Reading<Quantity>> range(String unsigned, String sign) {
    Matcher m = RANGE.matcher(unsigned);
    if (!m.matches()) {
      return Optional.empty();
    }
    String high = m.group("high");
    String unit = m.group("unit");
    String unitOfHigh = high.replaceFirst("^[0-9.,\u066b' /]+", "");
    if (unit != null && unitOfHigh.isEmpty()) {
      return Optional.empty();
    }
    String low = sign + m.group("low").strip() + " " + (unit == null ? unitOfHigh : unit.strip());
    return Optional.of(
        settling.refused(
            RemarkId.RANGE_GIVEN,
            "That is a range; one value is needed.",
            readable(List.of(low.strip(), high))));
  }

  private static List<Amount> signs(List<Amount> numbers, String sign) {
    return sign.equals("-") ? numbers.stream().map(Amount::negated).toList() : numbers;
  }

  /** Those of the texts that the API would read, however the writer's style reads them. */
  private List<String> readable(List<String> texts) {
    return texts.stream()
        .filter(t -> t.length() <= QuantityLimits.TEXT)
        .filter(t -> new TextReader(kind, NumberStyle.ANY, settling).single(t).value().isPresent())
        .toList();
  }
}
