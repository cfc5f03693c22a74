package club.emberwell.stats;

/**
 * A range with the probability it claims. Bounds in the unit of the values it was made from.
 *
 * @param low lower bound
 * @param high upper bound, not below {@code low}
 * @param coverage the probability the range really has (0 to 1), which for order statistics differs
 *     from the level asked for
 */
public record Interval(double low, double high, double coverage) {
  public Interval {
    if (Double.isNaN(low) || Double.isNaN(high) || low > high) {
      throw new IllegalArgumentException("not an interval: " + low + " to " + high);
    }
  }

  /** Upper bound over lower bound, for values that are positive; otherwise NaN. */
  public double ratio() {
    return low > 0 ? high / low : Double.NaN;
  }

  public double width() {
    return high - low;
  }

  public boolean contains(double value) {
    return value >= low && value <= high;
  }

  /** The same range in a unit of which the old one holds so many. */
  public Interval times(double factor) {
    return new Interval(factor * low, factor * high, coverage);
  }

  /** The same range with both bounds exponentiated: from the log scale back to the unit. */
  public Interval exp() {
    return new Interval(Math.exp(low), Math.exp(high), coverage);
  }
}
