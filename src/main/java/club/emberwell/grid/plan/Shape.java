package club.emberwell.grid.plan;

import club.emberwell.grid.reading.GridLimits;
import java.util.Optional;

/**
 * The sides of a grid in which each dose is tested once: along the fine side doses rise by one
 * step, and each value of the coarse side goes on where the one before ends, so that with n fine
 * values its own step is the n-th power of the fine one.
 *
 * @param fine values on the fine side
 * @param coarse values on the other
 * @param step ratio between neighbouring doses
 */
record Shape(int fine, int coarse, double step) {
  /** Longest fine side: more would ask too much of one setting (own rule, no source). */
  private static final int LONGEST = 6;

  /** So many tests may lie in one line. */
  private static final int LINE = 5;

  /** Coarser by this where there are more cells than asked. */
  private static final double COARSER = 1.02;

  int cells() {
    return fine * coarse;
  }

  /**
   * The fewest cells over a span of doses.
   *
   * @param span highest over lowest dose
   * @param wanted step at most; wider where that takes more cells than {@code most}
   */
  static Shape of(double span, double wanted, int most) {
    double steps = Math.log(span) / Math.log(wanted);
    int tests = Math.max(GridLimits.FEWEST, (int) Math.ceil(steps - 1e-9) + 1);
    while (tests > GridLimits.FEWEST) {
      Optional<Shape> found = ofTests(span, tests, most);
      if (found.isPresent()) {
        return found.get();
      }
      tests--;
    }
    return new Shape(GridLimits.FEWEST, 1, span);
  }

  /** With at least so many cells: as few as can be, the most nearly square of these. */
  private static Optional<Shape> ofTests(double span, int tests, int most) {
    Shape best = null;
    for (int fine = 2; fine <= Math.max(LONGEST, ceil(tests, GridLimits.SIDE)); fine++) {
      int coarse = ceil(tests, fine);
      boolean fits = fine <= GridLimits.SIDE && coarse <= GridLimits.SIDE && fine * coarse <= most;
      boolean shaped = coarse > 1 ? fine >= coarse || tests > LONGEST * LONGEST : fine <= LINE;
      Shape shape = of(span, fine, coarse);
      if (fits && shaped && (best == null || shape.isBetterThan(best))) {
        best = shape;
      }
    }
    return Optional.ofNullable(best);
  }

  private boolean isBetterThan(Shape other) {
    return cells() != other.cells()
        ? cells() < other.cells()
        : Math.abs(fine - coarse) < Math.abs(other.fine - other.coarse);
  }

  private static Shape of(double span, int fine, int coarse) {
    return new Shape(fine, coarse, Math.pow(span, 1.0 / (fine * coarse - 1)));
  }

  private static int ceil(int all, int each) {
    return (all + each - 1) / each;
  }

  /**
   * The same where the coarse side doubles from value to value, as whole numbers do.
   *
   * @param most as above
   */
  static Shape doubling(double span, double wanted, int most) {
    for (double step = wanted; ; step *= COARSER) {
      int fine = Math.max(1, (int) Math.ceil(Math.log(2) / Math.log(step) - 1e-9));
      double own = Math.pow(2, 1.0 / fine);
      double left = Math.log(span) - (fine - 1) * Math.log(own);
      int coarse = 1 + Math.max(0, (int) Math.ceil(left / Math.log(2) - 1e-9));
      if (fine <= GridLimits.SIDE && (fine * coarse <= most || fine == 1)) {
        return new Shape(fine, coarse, own);
      }
    }
  }

  /**
   * Values on one side alone.
   *
   * @param most values
   */
  static int line(double span, double wanted, int most) {
    int values = 1 + (int) Math.ceil(Math.log(span) / Math.log(wanted) - 1e-9);
    return Math.max(1, Math.min(values, Math.min(most, GridLimits.SIDE)));
  }
}
