package club.emberwell.stats;

import java.util.Optional;
import java.util.function.DoubleUnaryOperator;

/**
 * Where the chance of a right result passes a stated probability, within the doses tried.
 *
 * @param low the lower edge
 * @param high the upper edge
 * @param probability the stated chance
 * @param peak dose with the largest chance among the doses tried
 * @param peakChance that chance
 */
public record WindowEdges(Edge low, Edge high, double probability, double peak, double peakChance) {

  /** Steps of the search for the peak along ln dose. */
  private static final int STEPS = 256;

  private static final int HALVINGS = 60;

  /** How an edge is known. */
  public enum Kind {
    /** A dose. */
    POINT,
    /** Somewhere from the one dose to the other: the grades do not overlap. */
    GAP,
    /** The window reaches the last dose tried and perhaps beyond. */
    OPEN
  }

  /** An edge: from and to are equal unless it is a gap. */
  public record Edge(Kind kind, double from, double to) {}

  static Optional<WindowEdges> of(DoseWindow window, double probability) {
    double first = Math.log(window.observed().low());
    double last = Math.log(window.observed().high());
    DoubleUnaryOperator right = x -> window.at(Math.exp(x)).orElseThrow().right();
    double peak = first;
    for (int i = 1; i <= STEPS; i++) {
      double x = first + (last - first) * i / STEPS;
      if (right.applyAsDouble(x) > right.applyAsDouble(peak)) {
        peak = x;
      }
    }
    double chance = right.applyAsDouble(peak);
    boolean fitted =
        window.lower().kind() == DoseLimit.Kind.FITTED
            || window.upper().kind() == DoseLimit.Kind.FITTED;
    if (fitted && chance < probability) {
      return Optional.empty();
    }
    DoubleUnaryOperator above = x -> right.applyAsDouble(x) - probability;
    Edge low = edge(window.lower(), above, peak, first);
    Edge high = edge(window.upper(), above, peak, last);
    return Optional.of(new WindowEdges(low, high, probability, Math.exp(peak), chance));
  }

  private static Edge edge(DoseLimit limit, DoubleUnaryOperator above, double peak, double end) {
    if (limit.kind() == DoseLimit.Kind.GAP) {
      Interval gap = limit.range().orElseThrow();
      return new Edge(Kind.GAP, gap.low(), gap.high());
    }
    if (limit.kind() == DoseLimit.Kind.UNKNOWN || above.applyAsDouble(end) >= 0) {
      return new Edge(Kind.OPEN, Math.exp(end), Math.exp(end));
    }
    double inside = peak;
    double outside = end;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (inside + outside) / 2;
      if (above.applyAsDouble(middle) >= 0) {
        inside = middle;
      } else {
        outside = middle;
      }
    }
    return new Edge(Kind.POINT, Math.exp(inside), Math.exp(inside));
  }
}
