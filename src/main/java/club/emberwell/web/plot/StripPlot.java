package club.emberwell.web.plot;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.function.DoubleFunction;
import java.util.stream.Stream;

/**
 * Members' values on one axis: fewer than 10 voices as dots, 10-49 as dots with a box, more as a
 * box over faint dots; the interval of the middle and the next-member band apart from each other.
 *
 * @param axisY how far below the top the axis lies, in drawing units
 * @param ticks of the axis
 */
public record StripPlot(
    Caption caption,
    double axisY,
    List<Dot> dots,
    Spans spans,
    Double median,
    List<Axis.Tick> ticks) {
  /** From this many voices a box is drawn; from {@link #FAINT_FROM} the dots fade. */
  public static final int BOX_FROM = 10;

  public static final int FAINT_FROM = 50;
  private static final double WIDTH = 400;
  private static final double EDGE = 18;
  private static final double RADIUS = 4;
  private static final int MOST_IN_STACK = 7;

  /** A voice; the kind names the style: dot, dot-faint, dot-hollow. */
  public record Dot(double x, double y, double radius, String kind) {}

  /** A stretch of the axis with its middle, in drawing units. */
  public record Span(double from, double to, double middleY, double length) {
    static Span on(Axis axis, double[] ends, double y) {
      if (ends == null) {
        return null;
      }
      double from = axis.at(ends[0]);
      double to = axis.at(ends[1]);
      return new Span(from, to, y, Axis.round(Math.max(1, to - from)));
    }
  }

  /** What lies over the dots; null = not shown. */
  public record Spans(Span box, Span medianInterval, Span band) {}

  /** What to draw, in the reader's unit. */
  public record Input(Caption caption, Values values, Middle middle, Scale scale) {}

  /**
   * Members' values.
   *
   * @param aside values set aside (hollow)
   */
  public record Values(double[] voices, double[] aside) {}

  /** What is known of all of them. Arrays of two are an interval's ends; null = not shown. */
  public record Middle(double[] quartiles, Double median, double[] medianInterval, double[] band) {}

  /**
   * How the axis runs.
   *
   * @param shared ends of an axis that several plots share, or null
   */
  public record Scale(boolean logarithmic, DoubleFunction<String> label, double[] shared) {}

  /** Lays the plot out. */
  public static StripPlot of(Input input) {
    Axis axis = Axis.holding(everything(input), input.scale().logarithmic(), EDGE, WIDTH - EDGE);
    double[] voices = input.values().voices();
    Middle middle = input.middle();
    int n = voices.length;
    List<Dot> dots = new ArrayList<>();
    String kind = n >= FAINT_FROM ? "dot-faint" : "dot";
    int tallest = stack(axis, voices, kind, dots);
    tallest = Math.max(tallest, stack(axis, input.values().aside(), "dot-hollow", dots));
    double dotsHeight = tallest * RADIUS * 2 + 8;
    double boxY = dotsHeight + 12;
    boolean spans = middle.medianInterval() != null || middle.band() != null || n >= BOX_FROM;
    double axisY = spans ? boxY + 16 : dotsHeight + 6;
    List<Dot> placed =
        dots.stream()
            .map(d -> new Dot(d.x(), Axis.round(dotsHeight - d.y()), d.radius(), d.kind()))
            .toList();
    return new StripPlot(
        input.caption(),
        Axis.round(axisY),
        placed,
        new Spans(
            n >= BOX_FROM ? Span.on(axis, middle.quartiles(), boxY) : null,
            Span.on(axis, middle.medianInterval(), boxY),
            Span.on(axis, middle.band(), boxY)),
        middle.median() == null ? null : axis.at(middle.median()),
        ticks(input, axis));
  }

  /** Where all values are one, its own number says more than round ones beside it. */
  private static List<Axis.Tick> ticks(Input input, Axis axis) {
    double[] all = everything(input);
    double least = Arrays.stream(all).min().orElse(Double.NaN);
    double most = Arrays.stream(all).max().orElse(Double.NaN);
    return least == most && all.length > 0
        ? List.of(new Axis.Tick(axis.at(least), input.scale().label().apply(least)))
        : axis.ticks(input.scale().label());
  }

  private static double[] everything(Input input) {
    Middle middle = input.middle();
    return Stream.of(
            input.values().voices(),
            input.values().aside(),
            middle.quartiles(),
            middle.medianInterval(),
            middle.band(),
            input.scale().shared())
        .filter(Objects::nonNull)
        .flatMapToDouble(Arrays::stream)
        .toArray();
  }

  /** Stacks dots that would hide each other; y counts up from the base. Gives the tallest stack. */
  private static int stack(Axis axis, double[] values, String kind, List<Dot> dots) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    int tallest = 1;
    int level = 0;
    double last = Double.NEGATIVE_INFINITY;
    for (double value : sorted) {
      double x = axis.at(value);
      level = x - last < RADIUS * 1.6 ? (level + 1) % MOST_IN_STACK : 0;
      if (level == 0) {
        last = x;
      }
      tallest = Math.max(tallest, level + 1);
      dots.add(new Dot(x, level * RADIUS * 2 + RADIUS, RADIUS, kind));
    }
    return tallest;
  }

  public double width() {
    return WIDTH;
  }

  public double height() {
    return Axis.round(axisY + 24);
  }

  /** Both ends of the picture for the axis line. */
  public double right() {
    return WIDTH - EDGE;
  }

  public double left() {
    return EDGE;
  }
}
