package club.emberwell.web.range;

import club.emberwell.consensus.dose.Window;
import club.emberwell.laser.Effect;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.stats.WindowEdges;
import club.emberwell.stats.WindowEdges.Edge;
import club.emberwell.web.plot.Caption;
import club.emberwell.web.plot.XyPlot;
import club.emberwell.web.plot.XyPlot.Point;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;

/**
 * The window of a range as a page shows it.
 *
 * @param sentence from which dose to which, or what is missing
 * @param counts the trials behind it
 * @param plot the chance of a right result over the trials; null where no dose was stated
 * @param rows the curve as a table, every few points
 */
public record WindowView(
    String sentence,
    String counts,
    List<String> missing,
    XyPlot plot,
    String unit,
    List<Row> rows) {
  private static final double PERCENT = 100;
  private static final int TABLE_EVERY = 6;

  /** One line of the table, percent. */
  public record Row(String dose, long tooLittle, long right, long tooMuch, boolean observed) {}

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
        window.edges().map(e -> sentence(e, text)).orElse("No window can be told yet."),
        counts,
        window.missing(),
        window.marks().isEmpty() ? null : plot(window, text, scope, counts),
        text.unit(),
        rows(window, text));
  }

  private static String leftOut(Window.Counts n) {
    int all = n.aside() + n.strays();
    return all == 0
        ? ""
        : "; left out as far off all others: " + RangeView.counted(all, "trial", "trials");
  }

  private static String sentence(WindowEdges edges, MeasureText text) {
    return "A right result is likelier than not %s %s, likeliest at %s (%s %%)."
        .formatted(
            edge("from", edges.low(), ", the least dose tried, or less,", text),
            edge("to", edges.high(), ", the highest dose tried, or more", text),
            text.text(edges.peak()),
            Math.round(edges.peakChance() * PERCENT));
  }

  private static String edge(String word, Edge edge, String open, MeasureText text) {
    String to = text.text(edge.to());
    return switch (edge.kind()) {
      case POINT -> "%s %s".formatted(word, to);
      case GAP -> "%s somewhere between %s and %s".formatted(word, text.number(edge.from()), to);
      case OPEN -> "%s %s%s".formatted(word, to, open);
    };
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
      String kind = mark.stray() ? "dot-hollow" : kind(mark.effect());
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
