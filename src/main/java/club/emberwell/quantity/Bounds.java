package club.emberwell.quantity;

/** From {@code min} to {@code max} in a canonical unit, both allowed. */
public record Bounds(double min, double max) {
  /** Every number. */
  public static final Bounds NONE = new Bounds(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);

  public boolean hold(double value) {
    return value >= min && value <= max;
  }
}
