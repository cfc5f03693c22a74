package club.emberwell.web.plot;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.DoubleFunction;
import java.util.stream.DoubleStream;

/**
 * Speed against power on one machine: the band of doses that were right, settings of others moved
 * there, and what the machine can do. On two logarithmic axes equal doses are straight lines.
 * Places across are percent of the width, places down pixels, as in {@link DosePlot}.
 *
 * @param top where the machine's highest speed lies, px; null = not known, or out of sight
 * @param start the start, or null
 */
public record SpeedPlot(
    Caption caption,
    Axes axes,
    String area,
    List<Line> lines,
    List<Dot> dots,
    Double top,
    Dot start) {
  private static final double HEIGHT = 230;
  private static final double TOP = 10;
  private static final double EDGE = 3;
  private static final double FULL = 100;

  /** What runs along an axis, with its round numbers. */
  public record Axes(
      String across, List<Axis.Tick> acrossTicks, String up, List<Axis.Tick> upTicks) {}

  /** A line of equal dose; the kind names its style. */
  public record Line(String kind, String points) {}

  /** Settings; x in percent of the width. */
  public record Dot(double x, double y, String href, String name) {}

  /** A power in percent with a speed in the reader's unit. */
  public record Point(double percent, double speed) {}

  /** A line before it is laid out. */
  public record Equal(String kind, List<Point> points) {}

  /** Settings before they are laid out. */
  public record Setting(Point at, String href, String name) {}

  /**
   * What is drawn.
   *
   * @param lines low, middle and high dose
   * @param top highest speed of the machine, or null
   * @param start or null
   */
  public record Input(
      Caption caption, List<Equal> lines, List<Setting> settings, Double top, Setting start) {}

  public static SpeedPlot of(Input input, String speedName, DoubleFunction<String> label) {
    List<Point> all = new ArrayList<>();
    input.lines().forEach(line -> all.addAll(line.points()));
    input.settings().forEach(setting -> all.add(setting.at()));
    if (input.start() != null) {
      all.add(input.start().at());
    }
    DoubleStream powers = all.stream().mapToDouble(Point::percent);
    Axis x =
        Axis.holding(
            DoubleStream.concat(powers, DoubleStream.of(FULL)).toArray(), true, EDGE, FULL - EDGE);
    Axis y = Axis.holding(all.stream().mapToDouble(Point::speed).toArray(), true, HEIGHT, TOP);
    Double top = input.top() != null && input.top() <= y.max() ? y.at(input.top()) : null;
    return new SpeedPlot(
        input.caption(),
        new Axes(
            "power, % of rated",
            x.ticks(percent -> Long.toString(Math.round(percent))), speedName, y.ticks(label)),
        area(input.lines(), x, y),
        input.lines().stream()
            .map(line -> new Line(line.kind(), joined(line.points(), x, y)))
            .toList(),
        input.settings().stream().map(setting -> dot(setting, x, y)).toList(),
        top,
        input.start() == null ? null : dot(input.start(), x, y));
  }

  private static Dot dot(Setting setting, Axis x, Axis y) {
    return new Dot(
        x.at(setting.at().percent()), y.at(setting.at().speed()), setting.href(), setting.name());
  }

  /** Between the outer lines; where the highest speed cuts the first, along that speed. */
  private static String area(List<Equal> lines, Axis x, Axis y) {
    if (lines.size() < 2) {
      return "";
    }
    List<Point> outline = new ArrayList<>(lines.get(0).points());
    List<Point> back = new ArrayList<>(lines.get(lines.size() - 1).points());
    Collections.reverse(back);
    if (outline.isEmpty() || back.isEmpty()) {
      return "";
    }
    outline.add(new Point(back.get(0).percent(), outline.get(outline.size() - 1).speed()));
    outline.addAll(back);
    return joined(outline, x, y);
  }

  private static String joined(List<Point> points, Axis x, Axis y) {
    StringBuilder text = new StringBuilder();
    for (Point p : points) {
      text.append(text.isEmpty() ? "" : " ")
          .append(x.at(p.percent()))
          .append(',')
          .append(y.at(p.speed()));
    }
    return text.toString();
  }

  /** Below the axes. */
  public double axisY() {
    return HEIGHT;
  }

  public double height() {
    return HEIGHT + 40;
  }
}
