package club.emberwell.stats;

import java.util.Arrays;
import java.util.Optional;

/**
 * Hartigan's dip: the largest distance between the empirical distribution and the closest
 * distribution with one mode. Large where values fall into camps.
 *
 * <p>Source: Hartigan &amp; Hartigan, "The dip test of unimodality", Annals of Statistics 13 (1985)
 * 70-84, section 4; written from the paper and checked against R's diptest and against a linear
 * program over all unimodal distributions. The p-value is for uniform values, from R's own table
 * ({@link DipTable}).
 *
 * <p>The null distribution is continuous: equal values count against one mode, so do not feed it
 * values rounded to a few steps. On pages from 15 voices.
 *
 * @param dip between 1/(2n) and 1/2
 * @param pValue chance of a dip as large of uniform values; 0 means "below one in 100,000"
 */
public record DipTest(double dip, double pValue) {

  /** Fewest voices of which camps are looked for this way. */
  public static final int FEWEST = 15;

  /** The test of values in any order; empty of none. All equal have the smallest dip. */
  public static Optional<DipTest> of(double[] values) {
    if (values.length == 0) {
      return Optional.empty();
    }
    double[] ascending = Checked.finite(values).clone();
    Arrays.sort(ascending);
    double dip = dip(ascending);
    return Optional.of(new DipTest(dip, DipTable.standard().pValue(values.length, dip)));
  }

  /** The dip of ascending values, at least one. */
  static double dip(double[] ascending) {
    return new Steps(ascending).dip();
  }

  /** The empirical distribution as a staircase: lower and upper corner at each distinct value. */
  private static final class Steps {
    private final int n;
    private final int distinct;
    private final double[] x;
    private final double[] lower;
    private final double[] upper;
    private final int[] convex;
    private final int[] concave;
    private double largest = 1;

    Steps(double[] ascending) {
      n = ascending.length;
      x = new double[n];
      lower = new double[n];
      upper = new double[n];
      convex = new int[n];
      concave = new int[n];
      int count = 0;
      for (int i = 0; i < n; i++) {
        if (i == 0 || ascending[i] != ascending[i - 1]) {
          x[count] = ascending[i];
          lower[count] = i;
          count++;
        }
        upper[count - 1] = i + 1;
      }
      distinct = count;
    }

    double dip() {
      int from = 0;
      int to = distinct - 1;
      while (from < to) {
        int minorant = hull(lower, from, to, 1, convex);
        int majorant = hull(upper, from, to, -1, concave);
        int[] modal = modal(minorant, majorant);
        if (modal == null) {
          break;
        }
        measure(convex, minorant, lower, upper, from, modal[0]);
        measure(concave, majorant, upper, lower, modal[1], to);
        if (modal[0] == from && modal[1] == to) {
          break;
        }
        from = modal[0];
        to = modal[1];
      }
      return largest / (2.0 * n);
    }

    /** Vertices of the convex (sign 1) or concave (sign -1) hull of corners; their number. */
    private int hull(double[] height, int from, int to, int sign, int[] vertices) {
      int size = 0;
      for (int i = from; i <= to; i++) {
        while (size > 1 && !turns(height, vertices[size - 2], vertices[size - 1], i, sign)) {
          size--;
        }
        vertices[size++] = i;
      }
      return size;
    }

    private boolean turns(double[] height, int a, int b, int c, int sign) {
      double first = (height[b] - height[a]) * (x[c] - x[b]);
      double second = (height[c] - height[b]) * (x[b] - x[a]);
      return sign * (first - second) < 0;
    }

    /** The interval between the hulls' farthest place and its neighbour; null if not farther. */
    private int[] modal(int minorant, int majorant) {
      double farthest = 0;
      int[] modal = {0, 0};
      for (int i = 0, j = 0; i < majorant; i++) {
        while (j + 1 < minorant && convex[j + 1] <= concave[i]) {
          j++;
        }
        double distance = upper[concave[i]] - height(convex, j, minorant, lower, concave[i]);
        if (distance >= farthest) {
          farthest = distance;
          modal = new int[] {convex[j], concave[i]};
        }
      }
      for (int i = 0, j = 0; i < minorant; i++) {
        while (j < majorant - 1 && concave[j] < convex[i]) {
          j++;
        }
        int segment = concave[j] > convex[i] ? j - 1 : j;
        double distance = height(concave, segment, majorant, upper, convex[i]) - lower[convex[i]];
        if (distance > farthest) {
          farthest = distance;
          modal = new int[] {convex[i], concave[j]};
        }
      }
      return farthest > largest ? modal : null;
    }

    /** Height at x[i] of the hull segment that starts at a vertex. */
    private double height(int[] vertices, int segment, int size, double[] height, int i) {
      int a = vertices[segment];
      if (segment + 1 >= size || a == i) {
        return height[a];
      }
      int b = vertices[segment + 1];
      return height[a] + (height[b] - height[a]) * (x[i] - x[a]) / (x[b] - x[a]);
    }

    /** Takes in the distance of the staircase's far corners from a hull over [from, to]. */
    private void measure(int[] vertices, int size, double[] near, double[] far, int from, int to) {
      int segment = 0;
      for (int i = from; i <= to; i++) {
        while (segment + 1 < size && vertices[segment + 1] <= i) {
          segment++;
        }
        double distance = Math.abs(far[i] - height(vertices, segment, size, near, i));
        largest = Math.max(largest, distance);
      }
    }
  }
}
