package club.emberwell.web.range;

import club.emberwell.consensus.dose.Window;
import club.emberwell.laser.Effect;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.stats.DoseLimit;
import club.emberwell.web.plot.Caption;
import club.emberwell.web.plot.XyPlot;
import club.emberwell.web.plot.XyPlot.Point;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/**
 * The window of a range as a page shows it.
 *
 * @param said from which dose to which, the best chance, and what is not known, in sentences
 * @param counts the trials behind it
 * @param plot the chance of a right result over the trials; null where no dose was stated
 * @param edges what is known of either edge, for the table
 * @param rows the curve as a table, every few points
 */
public record WindowView(
    List<String> said,
    String counts,
    XyPlot plot,
    String unit,
    List<EdgeRow> edges,
    List<Row> rows) {
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

  static WindowView of(Window window, UnitPreferences reader, String scope) {
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
        WindowWords.of(window, text),
        counts,
        window.marks().isEmpty() ? null : plot(window, text, scope, counts),
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
                    text.number(limit.dose()),
                    text.number(range.low()) + " to " + text.number(range.high()),
                    limit.kind() == DoseLimit.Kind.ROUGH));
  }

  private static String leftOut(Window.Counts n) {
    int all = n.aside() + n.strays();
    return all == 0
        ? ""
        : "; left out as far off all others: " + RangeView.counted(all, "trial", "trials");
  }

  private static XyPlot plot(Window window, MeasureText text, String scope, String counts) {
    double[] x =
        DoubleStream.concat(
                window.curve().stream().mapToDouble(p -> text.value(p.dose())),
                window.marks().stream().mapToDouble(m -> text.value(m.dose())))
            .toArray();
    XyPlot.Drawing drawing =
        new XyPlot.Drawing(
            new Caption(
                scope + "-window",
                "Chance of a right result over dose",
                """
                The curve is the fitted chance of a right result; grey where nobody tried. Dots are \
                trials: too little below, right in the middle, too much above; hollow where left out. \
                %s."""
                    .formatted(counts)),
            x,
            true,
            new double[] {0, PERCENT},
            false);
    for (Window.Mark mark : window.marks()) {
      String kind = mark.aside() ? "dot-hollow" : kind(mark.effect());
      drawing.dot(kind, text.value(mark.dose()), height(mark.effect()));
    }
    List<Point> run = new ArrayList<>();
    Boolean seen = null;
    for (Window.Point p : window.curve()) {
      Point point = new Point(text.value(p.dose()), p.right() * PERCENT);
      if (seen != null && seen != p.observed()) {
        run.add(point);
        drawing.line(seen ? "curve" : "curve-unseen", run);
        run = new ArrayList<>();
      }
      run.add(point);
      seen = p.observed();
    }
    drawing.line(Boolean.TRUE.equals(seen) ? "curve" : "curve-unseen", run);
    return drawing.done(
        window.measure().label() + ", " + text.unit(), text::tick, "right, %", text::tick);
  }

  private static String kind(Effect effect) {
    return switch (effect) {
      case TOO_LITTLE -> "dot-little";
      case RIGHT -> "dot-right";
      case TOO_MUCH -> "dot-much";
    };
  }

  private static double height(Effect effect) {
    return switch (effect) {
      case TOO_LITTLE -> 3;
      case RIGHT -> 50;
      case TOO_MUCH -> 97;
    };
  }

  private static List<Row> rows(Window window, MeasureText text) {
    List<Row> rows = new ArrayList<>();
    for (int i = 0; i < window.curve().size(); i += TABLE_EVERY) {
      Window.Point p = window.curve().get(i);
      rows.add(
          new Row(
              text.number(p.dose()),
              Math.round(p.tooLittle() * PERCENT),
              Math.round(p.right() * PERCENT),
              Math.round(p.tooMuch() * PERCENT),
              p.observed()));
    }
    return rows;
  }
}
