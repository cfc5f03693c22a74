package club.emberwell.web.plot;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;

/**
 * Curves and dots over two axes.
 *
 * @param id unique in the page
 * @param xName what runs across, with its unit
 * @param yName what runs up, with its unit
 */
public record XyPlot(
    String id,
    String title,
    String description,
    String xName,
    String yName,
    double width,
    double height,
    List<Line> areas,
    List<Line> lines,
    List<StripPlot.Dot> dots,
    List<Axis.Tick> xTicks,
    List<Axis.Tick> yTicks) {
  private static final double WIDTH = 400;
  private static final double HEIGHT = 262;
  private static final double LEFT = 46;
  private static final double RIGHT = 12;
  private static final double TOP = 24;
  private static final double BOTTOM = 42;
  private static final double RADIUS = 3;

  /** A run of points; the kind names its style. */
  public record Line(String kind, String points) {}

  /** A point in the data's own units. */
  public record Point(double x, double y) {}

  /** Puts a drawing together. */
  public static final class Drawing {
    private final String id;
    private final String title;
    private final String description;
    private final Axis x;
    private final Axis y;
    private final List<Line> areas = new ArrayList<>();
    private final List<Line> lines = new ArrayList<>();
    private final List<StripPlot.Dot> dots = new ArrayList<>();

    /**
     * @param x values in sight across
     * @param y values in sight upwards
     */
    public Drawing(
        String id,
        String title,
        String description,
        double[] x,
        boolean xLogarithmic,
        double[] y,
        boolean yLogarithmic) {
      this.id = id;
      this.title = title;
      this.description = description;
      this.x = Axis.holding(x, xLogarithmic, LEFT, WIDTH - RIGHT);
      this.y = Axis.holding(y, yLogarithmic, HEIGHT - BOTTOM, TOP);
    }

    public Drawing line(String kind, List<Point> points) {
      if (points.size() > 1) {
        lines.add(new Line(kind, joined(points)));
      }
      return this;
    }

    public Drawing area(String kind, List<Point> outline) {
      if (outline.size() > 2) {
        areas.add(new Line(kind, joined(outline)));
      }
      return this;
    }

    public Drawing dot(String kind, double atX, double atY) {
      dots.add(new StripPlot.Dot(x.at(atX), y.at(atY), RADIUS, kind));
      return this;
    }

    private String joined(List<Point> points) {
      StringBuilder text = new StringBuilder();
      for (Point p : points) {
        text.append(text.isEmpty() ? "" : " ").append(x.at(p.x())).append(',').append(y.at(p.y()));
      }
      return text.toString();
    }

    public XyPlot done(
        String xName, DoubleFunction<String> xLabel, String yName, DoubleFunction<String> yLabel) {
      return new XyPlot(
          id,
          title,
          description,
          xName,
          yName,
          WIDTH,
          HEIGHT,
          areas,
          lines,
          dots,
          x.ticks(xLabel),
          y.ticks(yLabel));
    }
  }

  public double left() {
    return LEFT;
  }

  public double right() {
    return WIDTH - RIGHT;
  }

  public double top() {
    return TOP;
  }

  public double bottom() {
    return HEIGHT - BOTTOM;
  }
}
