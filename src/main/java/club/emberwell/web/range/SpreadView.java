package club.emberwell.web.range;

import club.emberwell.consensus.SideBySide;
import club.emberwell.consensus.range.ConsensusLimits;
import club.emberwell.consensus.range.Spread;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.search.query.Measure;
import club.emberwell.stats.Interval;
import club.emberwell.stats.Quantiles;
import club.emberwell.web.plot.Caption;
import club.emberwell.web.plot.StripPlot;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;

/**
 * One measure of a range as a page shows it: a sentence, a plot, and the same numbers as a table.
 *
 * @param headline the middle and the quartiles in words, or the dots' values
 * @param sure what is known of the middle, or why nothing is
 * @param next where one more member would land, with its probability
 * @param cells the table under the plot
 */
public record SpreadView(
    String label,
    String unit,
    Counts counts,
    String headline,
    String sure,
    String next,
    StripPlot plot,
    List<Cell> cells) {
  private static final double PERCENT = 100;
  private static final double TENTHS = 10;
  private static final List<String> COLUMNS =
      List.of("Least", "10 %", "25 %", "Middle", "75 %", "90 %", "Most");

  /**
   * What is behind it.
   *
   * @param n trials
   * @param voices members
   * @param aside members set aside
   */
  public record Counts(int n, int voices, int aside) {}

  /** A column of the table. */
  public record Cell(String label, String value) {}

  /**
   * @param scope unique in the page, part of the plot's id
   * @param shared an axis that other spreads of the page share, or null
   */
  static SpreadView of(
      Spread spread, UnitPreferences reader, String scope, SideBySide.Axis shared) {
    Measure measure = spread.measure();
    MeasureText text = new MeasureText(measure, reader);
    String headline = headline(spread, text);
    String sure = sure(spread, text);
    String next = next(spread, text);
    return new SpreadView(
        measure.label(),
        text.unit(),
        new Counts(spread.n(), spread.voices().size(), spread.aside().size()),
        headline,
        sure,
        next,
        plot(spread, text, scope, headline + " " + sure + " " + next, shared),
        cells(spread, text));
  }

  private static String headline(Spread spread, MeasureText text) {
    if (spread.quantiles().isEmpty()) {
      return Arrays.stream(spread.voices().values())
          .sorted()
          .mapToObj(value -> text.measured(value, 0))
          .collect(Collectors.joining(" and "));
    }
    Quantiles.Seven q = spread.quantiles().get();
    if (q.min() == q.max()) {
      return "All " + spread.voices().size() + " members: " + text.measured(q.median(), 0) + ".";
    }
    if (q.p25() == q.p75()) {
      return "Middle "
          + text.measured(q.median(), half(spread))
          + ", the same for half of the members or more.";
    }
    if (middleElsewhere(spread)) {
      return "Half of the members between %s.".formatted(between(q.p25(), q.p75(), spread, text));
    }
    return "Middle %s, half of the members between %s."
        .formatted(
            text.measured(q.median(), half(spread)), between(q.p25(), q.p75(), spread, text));
  }

  /** The one middle of a dose is drawn toward relatives where voices are few; none beside it. */
  private static boolean middleElsewhere(Spread spread) {
    Measure measure = spread.measure();
    boolean dose = measure == Measure.AREAL_DOSE || measure == Measure.LINE_DOSE;
    return dose && spread.voices().size() < ConsensusLimits.BORROW_BELOW;
  }

  private static String sure(Spread spread, MeasureText text) {
    return spread
        .medianInterval()
        .map(i -> between(i.low(), i.high(), spread, text))
        .map("The middle of all such members lies between %s (95 %% interval)."::formatted)
        .orElse("Too few members to say how sure the middle is; that takes six.");
  }

  private static String next(Spread spread, MeasureText text) {
    return spread
        .nextMember()
        .map(
            i ->
                "About %d in 10 further members would be between %s (%s %%)."
                    .formatted(
                        (int) (i.coverage() * TENTHS),
                        between(i.low(), i.high(), spread, text),
                        Math.round(i.coverage() * PERCENT)))
        .orElse("Too few members for a band.");
  }

  /** Half of what is not known of the middle, canonical; NaN where nothing is. */
  static double half(Spread spread) {
    return spread
        .medianInterval()
        .or(spread::nextMember)
        .map(Interval::width)
        .map(width -> width / 2)
        .orElse(Double.NaN);
  }

  private static String between(double low, double high, Spread spread, MeasureText text) {
    String first = text.told(low, half(spread));
    String last = text.told(high, half(spread));
    return text.value(low) <= text.value(high) ? first + " and " + last : last + " and " + first;
  }

  private static StripPlot plot(
      Spread spread, MeasureText text, String scope, String description, SideBySide.Axis shared) {
    boolean positive =
        Arrays.stream(spread.voices().values()).allMatch(v -> v > 0)
            && Arrays.stream(spread.aside().values()).allMatch(v -> v > 0);
    return StripPlot.of(
        new StripPlot.Input(
            new Caption(
                scope + "-" + spread.measure().code(),
                spread.measure().label() + " of " + spread.voices().size() + " members",
                description),
            new StripPlot.Values(
                text.values(spread.voices().values()), text.values(spread.aside().values())),
            new StripPlot.Middle(
                spread.quantiles().map(q -> text.ends(q.p25(), q.p75())).orElse(null),
                spread
                    .quantiles()
                    .filter(q -> !middleElsewhere(spread))
                    .map(q -> text.value(q.median()))
                    .orElse(null),
                spread.medianInterval().map(i -> text.ends(i.low(), i.high())).orElse(null),
                spread.nextMember().map(i -> text.ends(i.low(), i.high())).orElse(null)),
            new StripPlot.Scale(
                positive,
                text::tick,
                shared == null ? null : text.ends(shared.low(), shared.high()))));
  }

  /** Smallest first in the reader's unit: more lines per inch is less spacing. */
  private static List<Cell> cells(Spread spread, MeasureText text) {
    if (spread.quantiles().isEmpty()) {
      return List.of();
    }
    Quantiles.Seven q = spread.quantiles().get();
    double[] values = {q.min(), q.p10(), q.p25(), q.median(), q.p75(), q.p90(), q.max()};
    boolean turned = text.value(q.min()) > text.value(q.max());
    List<Cell> cells = new ArrayList<>();
    for (int i = 0; i < values.length; i++) {
      double value = values[turned ? values.length - 1 - i : i];
      cells.add(new Cell(COLUMNS.get(i), text.told(value, half(spread))));
    }
    return cells;
  }
}
