package club.emberwell.grid.photo;

import java.util.List;
import java.util.stream.Stream;

/**
 * Where the four outermost corners of a grid's cells lie in its photo, as shares of the picture.
 * Seen on the blank they go round clockwise; the photo may be turned, but not mirrored.
 */
public record Corners(Spot topLeft, Spot topRight, Spot bottomRight, Spot bottomLeft) {
  private static final double INSET = 0.15;

  /** The least sine of an angle of the outline: below, three corners lie on a line. */
  private static final double FLAT = 0.05;

  /** Pixels of the picture that a cell must have along its sides at least. */
  private static final int CELL = 6;

  /** Where the corners stand before anybody moved them. */
  public static final Corners START =
      new Corners(
          new Spot(INSET, INSET),
          new Spot(1 - INSET, INSET),
          new Spot(1 - INSET, 1 - INSET),
          new Spot(INSET, 1 - INSET));

  /** Clockwise from the top left; null where one is missing. */
  public List<Spot> all() {
    return Stream.of(topLeft, topRight, bottomRight, bottomLeft).toList();
  }

  /**
   * What is wrong with them.
   *
   * @param width of the picture, pixels
   * @param height of the picture, pixels
   * @return a sentence for people, or null
   */
  public String fault(int width, int height, PhotoPlan plan) {
    List<Spot> shares = all();
    if (shares.contains(null)) {
      return "Mark all four corners of the grid.";
    }
    if (!shares.stream().allMatch(Spot::inside)) {
      return "All four corners must be inside the photo. Take it from farther away.";
    }
    List<Spot> spots = shares.stream().map(spot -> spot.scaled(width, height)).toList();
    double across = Math.min(side(spots, 0), side(spots, 2)) / plan.columns();
    double down = Math.min(side(spots, 1), side(spots, 3)) / plan.rows();
    if (across < CELL || down < CELL) {
      return "The corners are too close together. A test needs at least "
          + CELL
          + " pixels of the photo.";
    }
    return shape(spots);
  }

  private static String shape(List<Spot> spots) {
    int clockwise = 0;
    for (int i = 0; i < spots.size(); i++) {
      double turn = turn(spots, i);
      if (Math.abs(turn) < FLAT) {
        return "Three corners are on one line. Move them apart.";
      }
      clockwise += turn > 0 ? 1 : 0;
    }
    if (clockwise == spots.size()) {
      return null;
    }
    return clockwise == 0
        ? "The corners run the wrong way round. Start at the top left and go clockwise."
        : "The lines between the corners cross or bend inwards. Put each corner in its place.";
  }

  private static double side(List<Spot> spots, int i) {
    return spots.get(i).distance(spots.get((i + 1) % spots.size()));
  }

  /** The sine of the turn at the corner after this one; positive = clockwise, y runs down. */
  private static double turn(List<Spot> spots, int i) {
    Spot a = spots.get(i);
    Spot b = spots.get((i + 1) % spots.size());
    Spot c = spots.get((i + 2) % spots.size());
    double cross = (b.x() - a.x()) * (c.y() - b.y()) - (b.y() - a.y()) * (c.x() - b.x());
    return cross / (a.distance(b) * b.distance(c));
  }
}
