package club.emberwell.grid.photo;

import java.util.List;

/**
 * How the cells of a grid lie on its blank, whatever the unit of length.
 *
 * @param cell side of a cell, &gt; 0
 * @param gap between two cells, 0 = none
 */
public record PhotoPlan(int rows, int columns, double cell, double gap) {

  /** A part of the plan. */
  record Area(double left, double top, double right, double bottom) {
    /** Without a share of its smaller side along each edge. */
    Area within(double share) {
      double edge = share * Math.min(right - left, bottom - top);
      return new Area(left + edge, top + edge, right - edge, bottom - edge);
    }
  }

  /** From the left edge of the first column to the right edge of the last. */
  public double width() {
    return columns * (cell + gap) - gap;
  }

  /** From the upper edge of the first row to the lower edge of the last. */
  public double height() {
    return rows * (cell + gap) - gap;
  }

  /** The outermost corners of the cells, clockwise from the top left. */
  List<Spot> corners() {
    return List.of(
        new Spot(0, 0), new Spot(width(), 0), new Spot(width(), height()), new Spot(0, height()));
  }

  /** Which part of the whole a cell is, as an SVG view box; null where it is not in the photo. */
  public String crop(int row, int column) {
    if (row >= rows || column >= columns) {
      return null;
    }
    Area area = area(row, column);
    return area.left() + " " + area.top() + " " + cell + " " + cell;
  }

  Area area(int row, int column) {
    double left = column * (cell + gap);
    double top = row * (cell + gap);
    return new Area(left, top, left + cell, top + cell);
  }
}
