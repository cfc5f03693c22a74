package club.emberwell.web.plot;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;

/** Curves and dots over two axes. */
public record XyPlot(
    Caption caption,
    Side across,
    Side up,
    List<Line> areas,
    List<Line> lines,
    List<StripPlot.Dot> dots) {
  private static final double WIDTH = 400;
  private static final double HEIGHT = 262;
  private static final double LEFT = 46;
  private static final double RIGHT = 12;
  private static final double TOP = 24;
  private static final double BOTTOM = 42;
  private static final double RADIUS = 3;

  /**
   * An axis as it is drawn.
   *
   * @param name what runs along it, with its unit
   */
  public record Side(String name, List<Axis.Tick> ticks) {}

  /** A run of points; the kind names its style. */
  public record Line(String kind, String points) {}

  /** A point in the data's own units. */
  public record Point(double x, double y) {}

  /** Puts a drawing together. */
  public static final class Drawing {
    private final Caption caption;
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
        Caption caption, double[] x, boolean xLogarithmic, double[] y, boolean yLogarithmic) {
      this.caption = caption;
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
          caption,
          new Side(xName, x.ticks(xLabel)),
          new Side(yName, y.ticks(yLabel)),
          areas,
          lines,
          dots);
    }
  }

  public double width() {
    return WIDTH;
  }

  public double height() {
    return HEIGHT;
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
