package club.emberwell.web.plot;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleFunction;

/**
 * Members' values on one axis: fewer than 10 voices as dots, 10-49 as dots with a box, more as a
 * box over faint dots; the interval of the middle and the next-member band apart from each other.
 *
 * @param id unique in the page, for title and description
 * @param ticks of the axis
 */
public record StripPlot(
    String id,
    String title,
    String description,
    double width,
    double height,
    double axisY,
    List<Dot> dots,
    Span box,
    Double median,
    Span medianInterval,
    Span band,
    Double mine,
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

  /**
   * What to draw, in the reader's unit. Arrays of two are an interval's ends; null = not shown.
   *
   * @param aside values set aside (hollow)
   * @param shared ends of an axis that several plots share, or null
   */
  public record Input(
      String id,
      String title,
      String description,
      double[] voices,
      double[] aside,
      double[] quartiles,
      Double median,
      double[] medianInterval,
      double[] band,
      Double mine,
      boolean logarithmic,
      DoubleFunction<String> label,
      double[] shared) {}

  /** Lays the plot out. */
  public static StripPlot of(Input input) {
    Axis axis = Axis.holding(everything(input), input.logarithmic(), EDGE, WIDTH - EDGE);
    int n = input.voices().length;
    List<Dot> dots = new ArrayList<>();
    String kind = n >= FAINT_FROM ? "dot-faint" : "dot";
    int tallest = stack(axis, input.voices(), kind, dots);
    tallest = Math.max(tallest, stack(axis, input.aside(), "dot-hollow", dots));
    double dotsHeight = tallest * RADIUS * 2 + 8;
    double boxY = dotsHeight + 12;
    boolean spans = input.medianInterval() != null || input.band() != null || n >= BOX_FROM;
    double axisY = spans ? boxY + 16 : dotsHeight + 6;
    List<Dot> placed =
        dots.stream()
            .map(d -> new Dot(d.x(), Axis.round(dotsHeight - d.y()), d.radius(), d.kind()))
            .toList();
    return new StripPlot(
        input.id(),
        input.title(),
        input.description(),
        WIDTH,
        Axis.round(axisY + 24),
        Axis.round(axisY),
        placed,
        n >= BOX_FROM ? Span.on(axis, input.quartiles(), boxY) : null,
        input.median() == null ? null : axis.at(input.median()),
        Span.on(axis, input.medianInterval(), boxY),
        Span.on(axis, input.band(), boxY),
        input.mine() == null ? null : axis.at(input.mine()),
        ticks(input, axis));
  }

  /** Where all values are one, its own number says more than round ones beside it. */
  private static List<Axis.Tick> ticks(Input input, Axis axis) {
    double[] all = everything(input);
    double least = Arrays.stream(all).min().orElse(Double.NaN);
    double most = Arrays.stream(all).max().orElse(Double.NaN);
    return least == most && all.length > 0
        ? List.of(new Axis.Tick(axis.at(least), input.label().apply(least)))
        : axis.ticks(input.label());
  }

  private static double[] everything(Input input) {
    List<double[]> parts = new ArrayList<>(List.of(input.voices(), input.aside()));
    for (double[] ends : Arrays.asList(input.quartiles(), input.medianInterval(), input.band())) {
      if (ends != null) {
        parts.add(ends);
      }
    }
    if (input.shared() != null) {
      parts.add(input.shared());
    }
    if (input.mine() != null) {
      parts.add(new double[] {input.mine()});
    }
    return parts.stream().flatMapToDouble(Arrays::stream).toArray();
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

  /** Both ends of the picture for the axis line. */
  public double right() {
    return width - EDGE;
  }

  public double left() {
    return EDGE;
  }
}
