package club.emberwell.quantity;

import club.emberwell.quantity.Candidates.Amount;
import club.emberwell.remark.Reading;
import club.emberwell.remark.Remark;
import club.emberwell.remark.Severity;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** One text, normalised: its number, its unit, and what is wrong with either. */
final class TextReader {
  private static final Pattern SIGNED = Pattern.compile("([+-]?) ?([^+-].*)");
  private static final Pattern NUMBER_FIRST =
      Pattern.compile("([0-9.,' ]*[0-9](?:[eE][+-]?[0-9]{1,4}(?![0-9]))?)(.*)");
  private static final Pattern RANGE =
      Pattern.compile(
          "(?<low>[0-9][0-9.,' /]*?) ?(?<unit>[^0-9 -][^0-9-]*?)?"
              + " ?(?:-|~|\\.{2,}|to|bis) ?(?<high>[0-9.,][^-]*)");
  private static final Pattern HEDGED =
      Pattern.compile(
          "(?i)(?:[~\\u2248<>\\u2264\\u2265]=?|(?:ca|circa|about|around|approx|max|min|up to)\\b\\.?)"
              + " ?(.+)");
  private static final Pattern FEED_WORD = Pattern.compile("[fF] ?([0-9].*)");

  private final Dimension dimension;
  private final Kind kind;
  private final NumberStyle style;
  private final String written;

  TextReader(Dimension dimension, NumberStyle style, String written) {
    this.dimension = dimension;
    this.kind = Kind.of(dimension);
    this.style = style;
    this.written = written;
  }

  Reading<Quantity> read(String text) {
    return special(text).orElseGet(() -> plain(text));
  }

  /** Forms that belong to one dimension, or that are refused before a number is looked for. */
  private Optional<Reading<Quantity>> special(String text) {
    return Stream.<Optional<Reading<Quantity>>>of(
            hedged(text), gauge(text), share(text), feedWord(text))
        .flatMap(Optional::stream)
        .findFirst();
  }

  private Reading<Quantity> plain(String text) {
    Matcher signed = SIGNED.matcher(text);
    if (!signed.matches()) {
      return notANumber();
    }
    boolean negative = signed.group(1).equals("-");
    String unsigned = signed.group(2);
    Optional<FractionText.Found> fraction = FractionText.read(unsigned);
    if (fraction.isPresent()) {
      return fraction(fraction.get(), negative);
    }
    Optional<Reading<Quantity>> range = range(unsigned, signed.group(1));
    if (range.isPresent()) {
      return range.get();
    }
    Matcher split = NUMBER_FIRST.matcher(unsigned);
    if (!split.matches() || split.group(2).startsWith(".") || split.group(2).startsWith(",")) {
      return notANumber();
    }
    List<BigDecimal> numbers = NumberText.read(split.group(1), style);
    if (numbers.isEmpty()) {
      return notANumber();
    }
    List<Amount> amounts = numbers.stream().map(Amount::of).toList();
    return withUnit(signs(amounts, negative), split.group(2).strip(), List.of());
  }

  private static List<Amount> signs(List<Amount> amounts, boolean negative) {
    return negative ? amounts.stream().map(Amount::negated).toList() : amounts;
  }

  private Reading<Quantity> fraction(FractionText.Found found, boolean negative) {
    if (found.numbers().isEmpty()) {
      return notANumber();
    }
    List<Amount> amounts = signs(found.numbers(), negative);
    if (kind.isLength()) {
      return withUnit(amounts, found.unit(), List.of());
    }
    List<Amount> decimals =
        amounts.stream()
            .map(a -> Amount.of(ExactNumbers.decimal(a.value())))
            .filter(a -> a.spelled().length() < QuantityLimits.STORED.getPrecision())
            .toList();
    Remark remark =
        Remark.error(QuantityRemarks.FRACTION_NOT_HERE, "", "Fractions are read in lengths only.");
    Reading<Quantity> asDecimals = withUnit(decimals, found.unit(), List.of(remark));
    return asDecimals;
  }

  /** Numbers and a unit's spelling to a value, or to a question with every possible reading. */
  private Reading<Quantity> withUnit(List<Amount> numbers, String unit, List<Remark> before) {
    if (numbers.isEmpty()) {
      return Reading.refused(written, before.toArray(Remark[]::new));
    }
    if (unit.isEmpty()) {
      List<Amount> offered = kind == Kind.RATIO ? PercentText.bare(numbers) : numbers;
      Candidates candidates = Candidates.bare(dimension, offered);
      return asked(candidates, numbers.size() > 1, QuantityRemarks.UNIT_MISSING, before);
    }
    UnitSpelling.Match match = UnitSpelling.read(kind, unit);
    Candidates candidates = new Candidates(numbers, match.codes());
    return switch (match.outcome()) {
      case KNOWN ->
          candidates.isClear() && before.isEmpty()
              ? accepted(candidates)
              : asked(candidates, numbers.size() > 1, "", before);
      case AMBIGUOUS ->
          asked(candidates, numbers.size() > 1, QuantityRemarks.UNIT_AMBIGUOUS, before);
      case OTHER_DIMENSION -> refused(otherDimension(unit));
      case UNKNOWN -> refused(unknownUnit(unit));
    };
  }

  private Reading<Quantity> accepted(Candidates candidates) {
    return CanonicalRules.settle(
        dimension,
        written,
        candidates.numbers().get(0).value(),
        UcumCodes.tabled(candidates.codes().get(0), dimension));
  }

  private Reading<Quantity> asked(
      Candidates candidates, boolean twoNumbers, String unitRemark, List<Remark> before) {
    List<String> readings = candidates.spelled(dimension);
    List<Remark> remarks = new ArrayList<>();
    before.forEach(b -> remarks.add(question(b.id(), b.detail(), readings)));
    if (twoNumbers) {
      boolean fraction = written.matches(".*[/\\u2044].*") && kind.isLength();
      remarks.add(
          fraction
              ? question(
                  QuantityRemarks.FRACTION_AMBIGUOUS,
                  "That fraction may have lost a space.",
                  readings)
              : question(
                  QuantityRemarks.NUMBER_AMBIGUOUS,
                  "The mark before three digits may be a decimal mark or a thousands mark.",
                  readings));
    }
    if (unitRemark.equals(QuantityRemarks.UNIT_MISSING)) {
      remarks.add(question(unitRemark, "A unit is needed.", readings));
    } else if (!unitRemark.isEmpty()) {
      remarks.add(question(unitRemark, "That unit could mean more than one thing.", readings));
    }
    return Reading.refused(written, remarks.toArray(Remark[]::new));
  }

  private Optional<Reading<Quantity>> hedged(String text) {
    Matcher m = HEDGED.matcher(text);
    if (!m.matches()) {
      return Optional.empty();
    }
    return Optional.of(
        refused(
            question(
                QuantityRemarks.NOT_EXACT,
                "One value is needed, without words or signs around it.",
                accepted(List.of(m.group(1))))));
  }

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
    String low = sign + m.group("low") + " " + (unit == null ? unitOfHigh : unit.strip());
    return Optional.of(
        refused(
            question(
                QuantityRemarks.RANGE_GIVEN,
                "That is a range; one value is needed.",
                accepted(List.of(low.strip(), high)))));
  }

  private Optional<Reading<Quantity>> gauge(String text) {
    return dimension == Dimension.THICKNESS
        ? GaugeTable.read(text).map(found -> gauge(found))
        : Optional.empty();
  }

  private Reading<Quantity> gauge(GaugeTable.Found found) {
    if (found.inches().isPresent()) {
      Reading<Quantity> reading =
          accepted(new Candidates(List.of(Amount.of(found.inches().get())), List.of("[in_i]")));
      String table = found.column().orElseThrow().name();
      return new Reading<>(
          written,
          reading.value(),
          List.of(Remark.info(QuantityRemarks.GAUGE_TABLE, "", "Looked up in: " + table + ".")));
    }
    List<String> readings =
        new Candidates(found.everywhere().stream().map(Amount::of).toList(), List.of("[in_i]"))
            .spelled(dimension);
    if (readings.isEmpty()) {
      return refused(
          question(QuantityRemarks.GAUGE_UNKNOWN, "No table here has that gauge.", readings));
    }
    return refused(
        question(
            QuantityRemarks.GAUGE_NEEDS_METAL,
            "Gauge means another thickness for every metal: name the metal or give the thickness.",
            readings));
  }

  private Optional<Reading<Quantity>> share(String text) {
    if (kind != Kind.RATIO) {
      return Optional.empty();
    }
    Optional<List<String>> spindle = PercentText.spindleWord(text);
    if (spindle.isPresent()) {
      return Optional.of(
          refused(
              question(
                  QuantityRemarks.DENOMINATOR_MISSING,
                  "An S word needs its whole, such as S800/1000.",
                  spindle.get())));
    }
    return PercentText.ratio(text, style)
        .map(
            amounts ->
                amounts.isEmpty() ? notANumber() : accepted(new Candidates(amounts, List.of("%"))));
  }

  private Optional<Reading<Quantity>> feedWord(String text) {
    Matcher m = FEED_WORD.matcher(text);
    if (kind != Kind.SPEED || !m.matches()) {
      return Optional.empty();
    }
    List<BigDecimal> numbers = NumberText.read(m.group(1), style);
    if (numbers.isEmpty()) {
      return Optional.empty();
    }
    Candidates candidates =
        new Candidates(numbers.stream().map(Amount::of).toList(), List.of("mm/min", "[in_i]/min"));
    return Optional.of(
        asked(candidates, numbers.size() > 1, QuantityRemarks.UNIT_MISSING, List.of()));
  }

  /** Those of the texts that are read when typed. */
  private List<String> accepted(List<String> texts) {
    return texts.stream()
        .filter(t -> QuantityReader.read(dimension, t, style).value().isPresent())
        .toList();
  }

  private Remark otherDimension(String unit) {
    return Remark.error(
        QuantityRemarks.UNIT_OF_OTHER_DIMENSION,
        "",
        "\"" + unit + "\" measures something else; here a unit like " + usual() + " is needed.");
  }

  private Remark unknownUnit(String unit) {
    return Remark.error(
        QuantityRemarks.UNIT_UNKNOWN,
        "",
        "\"" + unit + "\" is no unit known here; one would be " + usual() + ".");
  }

  private String usual() {
    return UnitTable.choices(dimension).get(0).label();
  }

  private Reading<Quantity> notANumber() {
    return refused(
        Remark.error(
            QuantityRemarks.NOT_A_NUMBER,
            "",
            "This does not start with a number that can be read, such as 12.5 " + usual() + "."));
  }

  private static Remark question(String id, String detail, List<String> readings) {
    return new Remark(id, Severity.ERROR, "", detail, readings);
  }

  private Reading<Quantity> refused(Remark remark) {
    return Reading.refused(written, remark);
  }
}
