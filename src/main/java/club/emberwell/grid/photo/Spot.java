package club.emberwell.grid.photo;

/**
 * A place in a picture or on a blank.
 *
 * @param x from the left; in a picture as a share of its width, 0..1
 * @param y from the top; in a picture as a share of its height, 0..1
 */
public record Spot(double x, double y) {
  boolean inside() {
    return x >= 0 && x <= 1 && y >= 0 && y <= 1;
  }

  Spot scaled(double across, double down) {
    return new Spot(x * across, y * down);
  }

  double distance(Spot other) {
    return Math.hypot(x - other.x, y - other.y);
  }
}
