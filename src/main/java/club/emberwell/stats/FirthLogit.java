package club.emberwell.stats;

import java.util.Optional;
import org.hipparchus.linear.RealMatrix;

/**
 * Logistic regression on few, possibly separated data: Firth's penalty, half the log determinant of
 * the information, keeps every estimate finite and removes its first-order bias.
 *
 * <p>Source: Firth, "Bias reduction of maximum likelihood estimates", Biometrika 80 (1993) 27-38;
 * Heinze &amp; Schemper, "A solution to the problem of separation in logistic regression",
 * Statistics in Medicine 21 (2002) 2409-2419.
 *
 * <p>Rows hold the covariates including the 1 for the constant; successes and trials are counts and
 * may be fractional (weights). NaN is refused; fewer distinct rows than coefficients have no fit.
 */
public final class FirthLogit {
  private static final double NEAR = 1e-12;

  private FirthLogit() {}

  /**
   * A fitted curve.
   *
   * @param coefficients on the log odds scale, in the order of the columns
   * @param covariance inverse Fisher information at the estimate
   */
  public record Fit(double[] coefficients, double[][] covariance) {

    /** Fitted probability at a row of covariates. */
    public double probability(double... row) {
      Checked.sameLength(row.length, coefficients.length);
      double logOdds = 0;
      for (int i = 0; i < row.length; i++) {
        logOdds += coefficients[i] * row[i];
      }
      return logistic(logOdds);
    }
  }

  /** The penalised fit; empty only of no data or of rows that do not determine a curve. */
  public static Optional<Fit> fit(double[][] rows, double[] successes, double[] trials) {
    Likelihood likelihood = new Likelihood(rows, successes, trials);
    if (rows.length == 0) {
      return Optional.empty();
    }
    return NewtonAscent.climb(likelihood, new double[rows[0].length])
        .map(top -> new Fit(top.parameters(), top.covariance().getData()));
  }

  /**
   * The same, climbing from coefficients that are near already, to a millionth of their standard
   * errors.
   */
  static Optional<double[]> near(
      double[][] rows, double[] successes, double[] trials, double[] start) {
    return NewtonAscent.climb(new Likelihood(rows, successes, trials), start, NEAR)
        .map(NewtonAscent.Point::parameters);
  }

  static double logistic(double logOdds) {
    return 1 / (1 + Math.exp(-logOdds));
  }

  /** The penalised likelihood and its score. */
  private record Likelihood(double[][] rows, double[] successes, double[] trials)
      implements NewtonAscent.Surface {

    Likelihood {
      Checked.sameLength(rows.length, successes.length);
      Checked.sameLength(rows.length, trials.length);
      Checked.weights(trials);
      Checked.finite(successes);
      for (int i = 0; i < rows.length; i++) {
        Checked.finite(rows[i]);
        Checked.sameLength(rows[i].length, rows[0].length);
        if (successes[i] < 0 || successes[i] > trials[i]) {
          throw new IllegalArgumentException(successes[i] + " of " + trials[i]);
        }
      }
    }

    @Override
    public Optional<NewtonAscent.Point> at(double[] beta) {
      int columns = beta.length;
      double[] p = new double[rows.length];
      double[][] information = new double[columns][columns];
      double logLikelihood = 0;
      for (int i = 0; i < rows.length; i++) {
        double logOdds = 0;
        for (int j = 0; j < columns; j++) {
          logOdds += rows[i][j] * beta[j];
        }
        // one exponential for both the chance and log(1 + e^x), neither overflowing
        double small = Math.exp(-Math.abs(logOdds));
        p[i] = (logOdds >= 0 ? 1 : small) / (1 + small);
        double softplus = Math.max(0, logOdds) + Math.log1p(small);
        logLikelihood += successes[i] * logOdds - trials[i] * softplus;
        add(information, rows[i], trials[i] * p[i] * (1 - p[i]));
      }
      double likelihood = logLikelihood;
      return NewtonAscent.Inverse.of(information)
          .map(
              inverse ->
                  new NewtonAscent.Point(
                      beta,
                      likelihood + inverse.logDeterminant() / 2,
                      score(p, inverse.matrix()),
                      inverse.matrix()));
    }

    private double[] score(double[] p, RealMatrix covariance) {
      double[][] v = covariance.getData();
      double[] score = new double[v.length];
      for (int i = 0; i < rows.length; i++) {
        double residual = successes[i] - trials[i] * p[i];
        double leverage = trials[i] * p[i] * (1 - p[i]) * form(v, rows[i]);
        residual += leverage * (0.5 - p[i]);
        for (int j = 0; j < score.length; j++) {
          score[j] += rows[i][j] * residual;
        }
      }
      return score;
    }
  }

  /** Adds weight x row x row' to a symmetric matrix, which stays so to the last digit. */
  static void add(double[][] matrix, double[] row, double weight) {
    for (int i = 0; i < row.length; i++) {
      double[] line = matrix[i];
      double share = row[i];
      for (int j = 0; j < row.length; j++) {
        line[j] += weight * (share * row[j]);
      }
    }
  }

  static double form(double[][] matrix, double[] row) {
    double sum = 0;
    for (int i = 0; i < row.length; i++) {
      for (int j = 0; j < row.length; j++) {
        sum += matrix[i][j] * row[i] * row[j];
      }
    }
    return sum;
  }
}
