package club.emberwell.stats;

import java.util.Optional;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;

/**
 * Climbs a likelihood by scoring steps. A step is halved until the target really rises (Armijo), or
 * close to the top, where a rise drowns in rounding, until the score shrinks; a plain step can
 * swing between two points for ever (two doses, two grades).
 */
final class NewtonAscent {
  private static final int MOST_STEPS = 500;
  private static final int MOST_HALVINGS = 50;
  private static final double ARMIJO = 1e-4;

  /** Squared length of a step in standard errors: below this the top is reached. */
  private static final double REACHED = 1e-22;

  /** As good as it gets where rounding stops the climb. */
  private static final double GOOD_ENOUGH = 1e-14;

  /** From here on the score decides about a step, not the target. */
  private static final double NEAR = 1e-8;

  /** A step that leaves more than this share of the gain to be had is looked at twice. */
  private static final double SLOW = 0.25;

  private NewtonAscent() {}

  /** A likelihood to climb. */
  interface Surface {
    /** What it is at some parameters; empty where it cannot be computed. */
    Optional<Point> at(double[] parameters);
  }

  /**
   * The surface at one place.
   *
   * @param parameters the place
   * @param target what is to be made largest
   * @param score gradient of the target (or of its estimating equation)
   * @param covariance inverse of the information
   */
  record Point(double[] parameters, double target, double[] score, RealMatrix covariance) {

    double[] step() {
      return covariance.operate(score);
    }

    double gain() {
      double[] step = step();
      double gain = 0;
      for (int i = 0; i < step.length; i++) {
        gain += step[i] * score[i];
      }
      return gain;
    }
  }

  /** Inverse and log determinant of an information matrix. */
  record Inverse(RealMatrix matrix, double logDeterminant) {
    /** Empty where the matrix is not positive definite. */
    static Optional<Inverse> of(double[][] information) {
      try {
        RealMatrix matrix = MatrixUtils.createRealMatrix(information);
        CholeskyDecomposition cholesky = new CholeskyDecomposition(matrix, 1e-9, 1e-300);
        double logDeterminant = 0;
        for (int i = 0; i < information.length; i++) {
          logDeterminant += 2 * Math.log(cholesky.getL().getEntry(i, i));
        }
        return Optional.of(new Inverse(cholesky.getSolver().getInverse(), logDeterminant));
      } catch (MathRuntimeException notPositive) {
        return Optional.empty();
      }
    }
  }

  /** The top from a starting place; empty where none is reached. */
  static Optional<Point> climb(Surface surface, double[] start) {
    return climb(surface, start, REACHED);
  }

  /**
   * The same to another precision.
   *
   * @param reached squared length of a step in standard errors below which the top is reached
   */
  static Optional<Point> climb(Surface surface, double[] start, double reached) {
    Optional<Point> here = surface.at(start);
    for (int i = 0; i < MOST_STEPS && here.isPresent() && here.get().gain() > reached; i++) {
      Optional<Point> next = better(surface, here.get());
      if (next.isEmpty()) {
        break;
      }
      here = Optional.of(shorter(surface, here.get(), next.get()));
    }
    return here.filter(point -> point.gain() <= Math.max(GOOD_ENOUGH, reached));
  }

  private static Optional<Point> better(Surface surface, Point here) {
    double[] step = here.step();
    double gain = here.gain();
    double share = 1;
    for (int i = 0; i < MOST_HALVINGS; i++, share /= 2) {
      double[] parameters = here.parameters().clone();
      for (int j = 0; j < step.length; j++) {
        parameters[j] += share * step[j];
      }
      Optional<Point> there = surface.at(parameters);
      if (there.isPresent() && rises(here, gain, there.get(), share)) {
        return there;
      }
    }
    return Optional.empty();
  }

  /** Half the step instead, where steps overshoot from side to side and gain little by it. */
  private static Point shorter(Surface surface, Point here, Point there) {
    if (there.gain() < SLOW * here.gain()) {
      return there;
    }
    double[] middle = here.parameters().clone();
    for (int i = 0; i < middle.length; i++) {
      middle[i] = (middle[i] + there.parameters()[i]) / 2;
    }
    return surface.at(middle).filter(point -> point.gain() < there.gain()).orElse(there);
  }

  private static boolean rises(Point here, double gain, Point there, double share) {
    return gain > NEAR
        ? there.target() >= here.target() + ARMIJO * share * gain
        : there.gain() < gain;
  }
}
