package club.emberwell.grid.photo;

import java.util.List;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.RealVector;

/**
 * A projective map of the plane: what a flat thing looks like through a lens without distortion.
 * After Hartley and Zisserman, "Multiple View Geometry in Computer Vision", 2nd ed., 4.1: with the
 * last element fixed at 1, four pairs of points give eight linear equations.
 *
 * @param h the nine elements, row by row
 */
record Homography(double... h) {
  private static final int UNKNOWN = 8;

  /** The map that takes each of four places to its counterpart; no three may lie on a line. */
  static Homography between(List<Spot> from, List<Spot> to) {
    double[][] a = new double[UNKNOWN][];
    double[] b = new double[UNKNOWN];
    for (int i = 0; i < from.size(); i++) {
      Spot p = from.get(i);
      Spot q = to.get(i);
      a[2 * i] = new double[] {p.x(), p.y(), 1, 0, 0, 0, -p.x() * q.x(), -p.y() * q.x()};
      a[2 * i + 1] = new double[] {0, 0, 0, p.x(), p.y(), 1, -p.x() * q.y(), -p.y() * q.y()};
      b[2 * i] = q.x();
      b[2 * i + 1] = q.y();
    }
    RealVector h =
        new LUDecomposition(new Array2DRowRealMatrix(a, false))
            .getSolver()
            .solve(new ArrayRealVector(b, false));
    return new Homography(h.append(1).toArray());
  }

  Spot map(Spot p) {
    double w = h[6] * p.x() + h[7] * p.y() + h[8];
    return new Spot(
        (h[0] * p.x() + h[1] * p.y() + h[2]) / w, (h[3] * p.x() + h[4] * p.y() + h[5]) / w);
  }

  /** The way back: the adjugate, as a common factor does not matter. */
  Homography inverse() {
    return new Homography(
        h[4] * h[8] - h[5] * h[7],
        h[2] * h[7] - h[1] * h[8],
        h[1] * h[5] - h[2] * h[4],
        h[5] * h[6] - h[3] * h[8],
        h[0] * h[8] - h[2] * h[6],
        h[2] * h[3] - h[0] * h[5],
        h[3] * h[7] - h[4] * h[6],
        h[1] * h[6] - h[0] * h[7],
        h[0] * h[4] - h[1] * h[3]);
  }
}
