package club.emberwell.web.plot;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;

/**
 * Usable shares of lots over the months in which they came, each with its interval. Places across
 * are percent of the width, places down pixels, as in {@link DosePlot}.
 *
 * @param downTicks of the share
 * @param ticks months
 */
public record SharePlot(
    Caption caption, List<Axis.Tick> downTicks, List<Bar> bars, List<Axis.Tick> ticks) {
  private static final double HEIGHT = 180;
  private static final double TOP = 12;
  private static final double EDGE = 4;
  private static final double FULL = 100;
  private static final int YEAR = 12;

  /** Months between the ends of the axis, at least. */
  private static final int SPAN = 6;

  private static final double TENTHS = 10;

  /**
   * A lot before it is laid out.
   *
   * @param chosen whether the page is about it
   */
  public record Counted(
      LocalDate day, double share, double low, double high, boolean chosen, String name) {}

  /** A lot at its place; y of its share and of the ends of its interval. */
  public record Bar(double x, double y, double low, double high, String kind, String name) {}

  /**
   * @param lots at least one
   */
  public static SharePlot of(Caption caption, List<Counted> lots) {
    double first = lots.stream().mapToDouble(lot -> month(lot.day())).min().orElseThrow();
    double last = lots.stream().mapToDouble(lot -> month(lot.day())).max().orElseThrow();
    double from = Math.floor(first);
    double to = Math.max(Math.ceil(last), from + SPAN);
    Axis x = new Axis(from, to, false, EDGE, FULL - EDGE);
    double least = lots.stream().mapToDouble(Counted::low).min().orElseThrow();
    Axis y = new Axis(Math.min(0.9, Math.floor(least * TENTHS) / TENTHS), 1, false, HEIGHT, TOP);
    return new SharePlot(
        caption,
        y.ticks(share -> Math.round(share * FULL) + " %"),
        lots.stream()
            .map(
                lot ->
                    new Bar(
                        x.at(month(lot.day())),
                        y.at(lot.share()),
                        y.at(lot.low()),
                        y.at(lot.high()),
                        lot.chosen() ? "chosen" : "usual",
                        lot.name()))
            .toList(),
        months(x, (int) from, (int) to));
  }

  private static double month(LocalDate day) {
    return day.getYear() * YEAR
        + day.getMonthValue()
        - 1
        + (day.getDayOfMonth() - 1) / (double) day.lengthOfMonth();
  }

  /** Both ends and the middle: a phone has no room for more. */
  private static List<Axis.Tick> months(Axis x, int from, int to) {
    return IntStream.of(from, (from + to) / 2, to)
        .mapToObj(
            at ->
                new Axis.Tick(
                    x.at(at), String.format(Locale.ROOT, "%d-%02d", at / YEAR, at % YEAR + 1)))
        .toList();
  }

  public double axisY() {
    return HEIGHT;
  }

  public double height() {
    return HEIGHT + 26;
  }
}
