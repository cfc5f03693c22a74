package club.emberwell.web.range;

import club.emberwell.consensus.dose.Window;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.stats.DoseLimit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The window of a range as a page shows it.
 *
 * @param said from which dose to which, the best chance, and what is not known, in sentences
 * @param counts the trials behind it
 * @param edges what is known of either edge, for the table
 * @param rows the curve as a table, every few points
 */
public record WindowView(
    List<String> said, String counts, String unit, List<EdgeRow> edges, List<Row> rows) {
  private static final double PERCENT = 100;
  private static final int TABLE_EVERY = 6;

  /** One line of the table, percent. */
  public record Row(String dose, long tooLittle, long right, long tooMuch, boolean observed) {}

  /**
   * One edge.
   *
   * @param interval its 95 % interval
   * @param rough fitted, but not well enough to be said in words
   */
  public record EdgeRow(String name, String dose, String interval, boolean rough) {}

  static WindowView of(Window window, Optional<Double> middle, UnitPreferences reader) {
    MeasureText text = new MeasureText(window.measure(), reader);
    Window.Counts n = window.counts();
    String counts =
        "%s too little, %s right, %s too much, by %s%s"
            .formatted(
                n.tooLittle(),
                n.right(),
                n.tooMuch(),
                RangeView.counted(n.members(), "member", "members"),
                leftOut(n));
    return new WindowView(
        WindowWords.of(window, middle, text),
        counts,
        text.unit(),
        Stream.concat(
                edge("Becomes right", window.lower(), text).stream(),
                edge("Becomes too much", window.upper(), text).stream())
            .toList(),
        rows(window, text));
  }

  private static Optional<EdgeRow> edge(String name, DoseLimit limit, MeasureText text) {
    return limit
        .range()
        .map(
            range ->
                new EdgeRow(
                    name,
                    text.told(limit.dose(), range.width() / 2),
                    text.ends(range),
                    limit.kind() == DoseLimit.Kind.ROUGH));
  }

  private static String leftOut(Window.Counts n) {
    int all = n.aside() + n.strays();
    return all == 0
        ? ""
        : "; left out as far off all others: " + RangeView.counted(all, "trial", "trials");
  }

  private static List<Row> rows(Window window, MeasureText text) {
    List<Row> rows = new ArrayList<>();
    for (int i = 0; i < window.curve().size(); i += TABLE_EVERY) {
      Window.Point p = window.curve().get(i);
      rows.add(
          new Row(
              text.told(p.dose(), 0),
              Math.round(p.tooLittle() * PERCENT),
              Math.round(p.right() * PERCENT),
              Math.round(p.tooMuch() * PERCENT),
              p.observed()));
    }
    return rows;
  }
}
