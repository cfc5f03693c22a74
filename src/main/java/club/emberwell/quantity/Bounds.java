package club.emberwell.quantity;

/** From {@code min} to {@code max} in a canonical unit, both allowed. */
public record Bounds(double min, double max) {
  public boolean hold(double value) {
    return value >= min && value <= max;
  }
}
