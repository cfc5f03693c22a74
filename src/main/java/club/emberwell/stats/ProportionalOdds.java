package club.emberwell.stats;

import java.util.Arrays;
import java.util.Optional;

/**
 * The proportional odds model of ordered grades, logit P(grade &lt;= j) = threshold(j) - x beta, by
 * maximum likelihood. A cross-check of the two separate curves of a {@link DoseWindow}: a little
 * better where it fits, but with few reports it often has no finite estimate.
 *
 * <p>Source: McCullagh, "Regression models for ordinal data", JRSS B 42 (1980) 109-142. Standard
 * errors come from the observed information, as in R's ordinal::clm and MASS::polr.
 */
public final class ProportionalOdds {
  private static final double INFINITE_ERROR = 1000;

  private ProportionalOdds() {}

  /**
   * A fit.
   *
   * @param thresholds ascending, one fewer than grades
   * @param coefficients one per covariate
   * @param covariance of thresholds, then coefficients
   */
  public record Fit(double[] thresholds, double[] coefficients, double[][] covariance) {

    /** Standard error of a threshold, or of a coefficient counted on after the thresholds. */
    public double error(int parameter) {
      return Math.sqrt(covariance[parameter][parameter]);
    }

    /** Probability of each grade, lowest first, at a row of covariates. */
    public double[] probabilities(double... row) {
      Checked.sameLength(row.length, coefficients.length);
      double shift = 0;
      for (int i = 0; i < row.length; i++) {
        shift += row[i] * coefficients[i];
      }
      double[] p = new double[thresholds.length + 1];
      double below = 0;
      for (int j = 0; j < thresholds.length; j++) {
        double upTo = FirthLogit.logistic(thresholds[j] - shift);
        p[j] = upTo - below;
        below = upTo;
      }
      p[thresholds.length] = 1 - below;
      return p;
    }

    /** With one covariate: where {@code P(grade <= j)} is one half. */
    public double edge(int j) {
      Checked.sameLength(coefficients.length, 1);
      return thresholds[j] / coefficients[0];
    }
  }

  /**
   * The fit.
   *
   * @param rows covariates without a constant
   * @param grades 0 to {@code count - 1}
   * @param count number of grades, 2 or more
   * @param weights of the observations
   * @return empty where a grade is missing, or the estimate is infinite or not determined
   */
  public static Optional<Fit> fit(double[][] rows, int[] grades, int count, double[] weights) {
    Surface surface = new Surface(rows, grades, count, weights);
    Optional<double[]> start = surface.start();
    if (start.isEmpty()) {
      return Optional.empty();
    }
    return NewtonAscent.climb(surface, start.get())
        .filter(surface::finite)
        .map(
            top ->
                new Fit(
                    Arrays.copyOf(top.parameters(), count - 1),
                    Arrays.copyOfRange(top.parameters(), count - 1, top.parameters().length),
                    top.covariance().getData()));
  }

  private record Surface(double[][] rows, int[] grades, int count, double[] weights)
      implements NewtonAscent.Surface {

    Surface {
      Checked.sameLength(rows.length, grades.length);
      Checked.sameLength(rows.length, weights.length);
      Checked.weights(weights);
      for (int i = 0; i < rows.length; i++) {
        Checked.finite(rows[i]);
        if (grades[i] < 0 || grades[i] >= count) {
          throw new IllegalArgumentException("grade " + grades[i] + " of " + count);
        }
      }
    }

    /** Log odds of the grades as they are; empty where one is missing. */
    Optional<double[]> start() {
      double[] shares = new double[count];
      double total = 0;
      for (int i = 0; i < rows.length; i++) {
        shares[grades[i]] += weights[i];
        total += weights[i];
      }
      if (rows.length == 0 || Arrays.stream(shares).anyMatch(share -> share == 0)) {
        return Optional.empty();
      }
      double[] start = new double[count - 1 + rows[0].length];
      double upTo = 0;
      for (int j = 0; j < count - 1; j++) {
        upTo += shares[j] / total;
        start[j] = Math.log(upTo / (1 - upTo));
      }
      return Optional.of(start);
    }

    @Override
    public Optional<NewtonAscent.Point> at(double[] parameters) {
      int size = parameters.length;
      double[] score = new double[size];
      double[][] information = new double[size][size];
      double logLikelihood = 0;
      for (int i = 0; i < rows.length; i++) {
        Curve upper = curve(i, grades[i], parameters);
        Curve lower = curve(i, grades[i] - 1, parameters);
        double p = upper.probability - lower.probability;
        if (!(p > 0)) {
          return Optional.empty();
        }
        logLikelihood += weights[i] * Math.log(p);
        FirthLogit.add(information, upper.row, -weights[i] * upper.slope / p);
        FirthLogit.add(information, lower.row, weights[i] * lower.slope / p);
        double[] gradient = new double[size];
        for (int j = 0; j < size; j++) {
          gradient[j] = (upper.density * upper.row[j] - lower.density * lower.row[j]) / p;
          score[j] += weights[i] * gradient[j];
        }
        FirthLogit.add(information, gradient, weights[i]);
      }
      double likelihood = logLikelihood;
      return NewtonAscent.Inverse.of(information)
          .map(inverse -> new NewtonAscent.Point(parameters, likelihood, score, inverse.matrix()));
    }

    /** The cumulated probability up to grade j with its first two derivatives. */
    private record Curve(double probability, double density, double slope, double[] row) {}

    private Curve curve(int i, int j, double[] parameters) {
      double[] row = row(i, j, parameters.length);
      if (j < 0) {
        return new Curve(0, 0, 0, row);
      }
      if (j >= count - 1) {
        return new Curve(1, 0, 0, row);
      }
      double logOdds = 0;
      for (int k = 0; k < row.length; k++) {
        logOdds += row[k] * parameters[k];
      }
      double p = FirthLogit.logistic(logOdds);
      double density = p * (1 - p);
      return new Curve(p, density, density * (1 - 2 * p), row);
    }

    private double[] row(int i, int j, int size) {
      double[] row = new double[size];
      if (j >= 0 && j < count - 1) {
        row[j] = 1;
        for (int k = 0; k < rows[i].length; k++) {
          row[count - 1 + k] = -rows[i][k];
        }
      }
      return row;
    }

    boolean finite(NewtonAscent.Point top) {
      for (int i = 0; i < rows.length; i++) {
        for (int j = grades[i] - 1; j <= grades[i]; j++) {
          if (!(top.error(row(i, j, top.parameters().length)) < INFINITE_ERROR)) {
            return false;
          }
        }
      }
      return true;
    }
  }
}
