package club.emberwell.quantity;

import club.emberwell.quantity.Candidates.Amount;
import club.emberwell.remark.Reading;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Forms that belong to one kind of quantity: sheet gauge, shares of a whole, feed words of a
 * program.
 */
record SpecialForms(QuantityKind kind, NumberStyle style, Settling settling) {
  private static final Pattern FEED_WORD = Pattern.compile("[fF] ?([0-9].*)");

  /** Empty where the text has none of these forms. */
  Optional<Reading<Quantity>> read(String text) {
    return switch (kind.dimension()) {
      case LENGTH ->
          kind == QuantityKind.THICKNESS
              ? GaugeTable.read(text).map(this::gauge)
              : Optional.empty();
      case RATIO -> share(text);
      case SPEED -> feedWord(text);
      default -> Optional.empty();
    };
  }

  private Reading<Quantity> gauge(GaugeTable.Found found) {
    Optional<BigDecimal> inches = found.inches();
    if (inches.isPresent()) {
      String table = found.column().orElseThrow().name();
      return new Reading<>(
          settling.written(),
          settling.accepted(inch(List.of(inches.get()))).value(),
          List.of(Remark.info(RemarkId.GAUGE_TABLE, "", "Looked up in: " + table + ".")));
    }
    List<String> readings = inch(found.everywhere()).spelled(kind);
    return readings.isEmpty()
        ? settling.refused(RemarkId.GAUGE_UNKNOWN, "No table here has that gauge.", readings)
        : settling.refused(
            RemarkId.GAUGE_NEEDS_METAL,
            "A gauge is another thickness for every metal: name the metal or give the thickness.",
            readings);
  }

  private static Candidates inch(List<BigDecimal> inches) {
    return new Candidates(inches.stream().map(Amount::of).toList(), List.of("[in_i]"));
  }

  private Optional<Reading<Quantity>> share(String text) {
    Optional<List<String>> spindle = PercentText.spindleWord(text);
    if (spindle.isPresent()) {
      return Optional.of(
          settling.refused(
              RemarkId.DENOMINATOR_MISSING,
              "An S word needs its whole, such as S800/1000.",
              spindle.get()));
    }
    return PercentText.ratio(text, style)
        .map(
            amounts ->
                amounts.isEmpty()
                    ? settling.notANumber()
                    : settling.accepted(new Candidates(amounts, List.of("%"))));
  }

  // Without a unit, whether F counts millimetres or inches stands elsewhere in the program.
  private Optional<Reading<Quantity>> feedWord(String text) {
    Matcher m = FEED_WORD.matcher(text);
    if (!m.matches()) {
      return Optional.empty();
    }
    List<Amount> numbers = NumberText.read(m.group(1), style).stream().map(Amount::of).toList();
    Candidates candidates = new Candidates(numbers, List.of("mm/min", "[in_i]/min"));
    return numbers.isEmpty()
        ? Optional.of(new TextReader(kind, style, settling).read(m.group(1)))
        : Optional.of(settling.asked(candidates, numbers, Optional.of(RemarkId.UNIT_MISSING)));
  }
}
