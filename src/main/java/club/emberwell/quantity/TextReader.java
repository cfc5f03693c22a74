package club.emberwell.quantity;

import club.emberwell.quantity.Candidates.Amount;
import club.emberwell.remark.Reading;
import club.emberwell.remark.RemarkId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** One text, normalised: first what is no single value, then a number and what follows it. */
final class TextReader {
  private static final Pattern SIGNED = Pattern.compile("([+-]?) ?([^+-].*)");
  private static final Pattern NUMBER_FIRST =
      Pattern.compile("([0-9.,' ]*[0-9](?:[eE][+-]?[0-9]{1,2}(?![0-9]))?)(.*)");
  private static final Pattern LONG_EXPONENT = Pattern.compile("[eE][+-]?[0-9].*");
  private static final Pattern RANGE =
      Pattern.compile(
          "(?<low>[0-9][0-9.,' /]*?) ?(?<unit>(?![eE]-)[^0-9 .,~-][^0-9-]*?)?"
              + " ?(?:-|~|\\.{2,}|to|bis) ?(?<high>[0-9.,][^-]*)");
  private static final Pattern HEDGED =
      Pattern.compile(
          "(?i)(?:[~\\u2248<>\\u2264\\u2265]=?"
              + "|(?:ca|circa|about|around|approx|max|min|up to)\\b\\.?) ?(.+)");

  private final QuantityKind kind;
  private final NumberStyle style;
  private final Settling settling;

  TextReader(QuantityKind kind, NumberStyle style, String written) {
    this.kind = kind;
    this.style = style;
    this.settling = new Settling(kind, written);
  }

  /** {@code text} is normalised and not empty. */
  Reading<Quantity> read(String text) {
    return hedged(text)
        .or(() -> new SpecialForms(kind, style, settling).read(text))
        .orElseGet(() -> signed(text));
  }

  private Optional<Reading<Quantity>> hedged(String text) {
    Matcher m = HEDGED.matcher(text);
    if (text.contains("±") || text.contains("+/-")) {
      return Optional.of(
          settling.refused(
              RemarkId.NOT_EXACT, "One value is needed, without its tolerance.", List.of()));
    }
    return m.matches()
        ? Optional.of(
            settling.refused(
                RemarkId.NOT_EXACT,
                "One value is needed, without words or signs around it.",
                readable(List.of(m.group(1)))))
        : Optional.empty();
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
        .or(() -> lengthFraction(m.group(2)).map(found -> fraction(found, m.group(1))))
        .orElseGet(() -> number(m.group(2), m.group(1)));
  }

  private Optional<FractionText.Found> lengthFraction(String unsigned) {
    return kind.dimension().isLength() ? FractionText.read(unsigned) : Optional.empty();
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
    if (kind.dimension().isLength()) {
      return settling.withUnit(signs(found.numbers(), sign), found.unit());
    }
    List<String> readings = new ArrayList<>();
    if (kind.dimension() == Dimension.RATIO) {
      found.numbers().forEach(a -> readings.add(a.spelled()));
    }
    found.numbers().stream()
        .filter(a -> ExactNumbers.endsAsDecimal(a.value()))
        .map(a -> ExactNumbers.decimal(a.value()))
        .map(d -> sign + NumberText.unmistakable(d) + " " + found.unit())
        .forEach(readings::add);
    return settling.refused(
        RemarkId.FRACTION_NOT_HERE,
        "Fractions are read in lengths only; write a decimal number.",
        readable(readings));
  }

  /** Low and high are offered, never a mean: the writer meant neither to be averaged. */
  private Optional<Reading<Quantity>> range(String unsigned, String sign) {
    Matcher m = RANGE.matcher(unsigned);
    if (!m.matches()) {
      return Optional.empty();
    }
    String high = m.group("high");
    String unit = m.group("unit");
    String unitOfHigh = high.replaceFirst("^[0-9.,' /]+", "");
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
        .filter(t -> new TextReader(kind, NumberStyle.ANY, t).single(t).value().isPresent())
        .toList();
  }
}
