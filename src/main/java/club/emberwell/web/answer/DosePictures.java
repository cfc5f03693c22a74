package club.emberwell.web.answer;

import club.emberwell.consensus.dose.Window;
import club.emberwell.laser.Effect;
import club.emberwell.report.ReportBrief;
import club.emberwell.stats.DoseLimit;
import club.emberwell.stats.Interval;
import club.emberwell.web.answer.AnswerView.Drawn;
import club.emberwell.web.answer.AnswerView.Row;
import club.emberwell.web.plot.Caption;
import club.emberwell.web.plot.DosePlot;
import club.emberwell.web.range.MeasureText;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;

/** Draws the trials of a work over their dose. */
final class DosePictures {
  /** Dots at most: beyond, they are thinned evenly. */
  static final int MARKS = 48;

  /** Points of the curve are taken this far apart. */
  private static final int CURVE_EVERY = 2;

  /** Far beyond every axis: a band that fades there fades to the edge of the drawing. */
  private static final double BEYOND = 1e6;

  private DosePictures() {}

  /** A dose that is marked, with a word for what it is. */
  record Start(String word, double dose) {}

  /** The trials that are drawn. */
  static List<Window.Mark> marks(Window window) {
    List<Window.Mark> all = window.marks();
    int step = (all.size() + MARKS - 1) / MARKS;
    List<Window.Mark> some = new ArrayList<>();
    for (int i = 0; i < all.size(); i += step) {
      some.add(all.get(i));
    }
    return some;
  }

  /**
   * Draws.
   *
   * @param times how many times the doses of others the reader's machine takes, 1 if not known
   */
  static Drawn of(
      Window window, Start start, double times, MeasureText text, Map<Long, ReportBrief> reports) {
    List<Window.Mark> marks =
        marks(window).stream().filter(mark -> reports.containsKey(mark.report())).toList();
    List<DosePlot.Effect> lanes =
        Stream.of(Effect.TOO_MUCH, Effect.RIGHT, Effect.TOO_LITTLE)
            .map(effect -> lane(effect, marks, text, reports))
            .toList();
    String counts = counts(window);
    DosePlot plot =
        DosePlot.of(
            new DosePlot.Input(
                new Caption("dose", "What came out at which dose", counts),
                lanes,
                chances(window, times, text),
                corners(window, text),
                start == null ? null : text.value(start.dose()),
                start == null ? "" : start.word() + " " + text.told(start.dose()),
                new DosePlot.Scale(
                    (text.areal() ? "energy per area, " : "energy per length, ") + text.unit(),
                    text::tick)));
    boolean moved = times != 1 && !window.curve().isEmpty();
    return new Drawn(
        plot,
        counts,
        moved ? "The curve is for your machine. Dots are the tests of all members." : null,
        text.unit(),
        rows(marks, text, reports));
  }

  private static String counts(Window window) {
    Window.Counts n = window.counts();
    int aside = n.aside() + n.strays();
    String all =
        "%s too little, %s right, %s too much.".formatted(n.tooLittle(), n.right(), n.tooMuch());
    String left = aside == 0 ? "" : " Hollow dots look like typing mistakes and are not counted.";
    int drawn = marks(window).size();
    String thinned =
        n.tooLittle() + n.right() + n.tooMuch() + aside > drawn
            ? " %s are drawn.".formatted(drawn)
            : "";
    return all + thinned + left;
  }

  private static DosePlot.Effect lane(
      Effect effect, List<Window.Mark> marks, MeasureText text, Map<Long, ReportBrief> reports) {
    return new DosePlot.Effect(
        effect.label().toLowerCase(Locale.ROOT),
        marks.stream()
            .filter(mark -> mark.effect() == effect)
            .sorted(Comparator.comparingLong(Window.Mark::report))
            .map(mark -> trial(mark, text, reports.get(mark.report())))
            .toList());
  }

  private static DosePlot.Trial trial(Window.Mark mark, MeasureText text, ReportBrief report) {
    String name =
        "%s at %s %s, %s"
            .formatted(mark.effect().label(), text.told(mark.dose()), text.unit(), report.author());
    return new DosePlot.Trial(
        text.value(mark.dose()),
        kind(mark.effect()),
        mark.aside(),
        "/reports/" + report.id(),
        mark.aside() ? name + ": looks like a typing mistake" : name);
  }

  private static String kind(Effect effect) {
    return switch (effect) {
      case TOO_LITTLE -> "little";
      case RIGHT -> "right";
      case TOO_MUCH -> "much";
    };
  }

  private static List<DosePlot.Chance> chances(Window window, double times, MeasureText text) {
    List<DosePlot.Chance> chances = new ArrayList<>();
    for (int i = 0; i < window.curve().size(); i += CURVE_EVERY) {
      Window.Point point = window.curve().get(i);
      chances.add(
          new DosePlot.Chance(text.value(times * point.dose()), point.right(), point.observed()));
    }
    return chances;
  }

  /** Where the band rises, is full, and falls; null where nothing came out right. */
  private static double[] corners(Window window, MeasureText text) {
    double[] right =
        window.marks().stream()
            .filter(mark -> mark.effect() == Effect.RIGHT && !mark.aside())
            .mapToDouble(Window.Mark::dose)
            .sorted()
            .toArray();
    if (right.length == 0) {
      return null;
    }
    double[] low = corner(window.lower(), right[0], right[0] / BEYOND);
    double[] high = corner(window.upper(), right[right.length - 1], right[0] * BEYOND);
    double middle = Math.sqrt(low[0] * high[0]);
    double from = Math.min(low[0], low[0] < high[0] ? low[0] : middle);
    double to = Math.max(from, high[0]);
    return new double[] {
      text.value(Math.min(low[1], from)),
      text.value(from),
      text.value(to),
      text.value(Math.max(high[1], to))
    };
  }

  /** Where an edge is surely reached and where it fades to: both its dose where that is told. */
  private static double[] corner(DoseLimit limit, double last, double open) {
    Interval range = limit.range().orElse(null);
    return switch (limit.kind()) {
      case TOLD -> new double[] {limit.dose(), limit.dose()};
      case ROUGH -> new double[] {limit.dose(), open < last ? range.low() : range.high()};
      case NOT_KNOWN, NOT_TRIED -> new double[] {last, open};
    };
  }

  private static List<Row> rows(
      List<Window.Mark> marks, MeasureText text, Map<Long, ReportBrief> reports) {
    return marks.stream()
        .sorted(
            Comparator.comparingDouble(Window.Mark::dose).thenComparingLong(Window.Mark::report))
        .map(
            mark -> {
              ReportBrief report = reports.get(mark.report());
              return new Row(
                  text.told(mark.dose()),
                  mark.effect().label().toLowerCase(Locale.ROOT),
                  "/reports/" + report.id(),
                  report.author(),
                  mark.aside());
            })
        .toList();
  }
}
