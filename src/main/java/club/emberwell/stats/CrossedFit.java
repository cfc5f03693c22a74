package club.emberwell.stats;

import java.util.Arrays;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.ConjugateGradient;
import org.hipparchus.linear.JacobiPreconditioner;
import org.hipparchus.linear.RealLinearOperator;
import org.hipparchus.linear.RealVector;

/**
 * Effects of the columns of {@link CrossedCells} and the two variances beside that of repeats.
 *
 * @param effects of the columns; their sum is zero
 * @param errors covariance of the errors of the effects; only its diagonal beyond {@link #EXACT}
 *     columns, where the errors of two columns hardly go together
 * @param between variance of columns
 * @param interaction variance of cells beside their row and column
 */
record CrossedFit(double[] effects, double[][] errors, double between, double interaction) {
  /** Up to so many columns matrices are inverted; beyond, only solved for. */
  static final int EXACT = 100;

  private static final int MOST_STEPS = 60;

  /** Relative change of the variances that ends the search. */
  private static final double REACHED = 1e-3;

  /** Machines are taken to differ by 15 %, weighing as much as two of them (own guess). */
  private static final double BETWEEN = 0.15;

  private static final double BETWEEN_WEIGHT = 2;

  /**
   * One machine on one work is taken to differ by 5 % more, weighing as much as one (own guess).
   */
  private static final double INTERACTION = 0.05;

  private static final double INTERACTION_WEIGHT = 1;

  private static final int MOST_SOLVING = 200;
  private static final double SOLVED = 1e-8;

  /**
   * What the cells say at given variances, rows eliminated.
   *
   * @param precision of each cell's mean
   * @param rowPrecision sums of these over the cells of a row
   * @param diagonal of the information on the columns, without what is known of them before
   */
  private record Weighed(
      CrossedCells cells, double[] precision, double[] rowPrecision, double[] diagonal) {
    static Weighed of(CrossedCells cells, double interaction) {
      double[] precision = new double[cells.size()];
      double[] row = new double[cells.rows()];
      double[] diagonal = new double[cells.columns()];
      for (int i = 0; i < precision.length; i++) {
        precision[i] = 1 / (interaction + cells.within() / cells.count()[i]);
        row[cells.row()[i]] += precision[i];
      }
      for (int i = 0; i < precision.length; i++) {
        diagonal[cells.column()[i]] += precision[i] * (1 - precision[i] / row[cells.row()[i]]);
      }
      return new Weighed(cells, precision, row, diagonal);
    }

    /** Means of the rows of what is given for each cell. */
    double[] rowMeans(double[] of) {
      double[] means = new double[rowPrecision.length];
      for (int i = 0; i < of.length; i++) {
        means[cells.row()[i]] += precision[i] * of[i];
      }
      for (int row = 0; row < means.length; row++) {
        means[row] = rowPrecision[row] > 0 ? means[row] / rowPrecision[row] : 0;
      }
      return means;
    }

    /** Sums over the cells of each column of what rows leave over. */
    double[] columnSums(double[] of) {
      double[] rows = rowMeans(of);
      double[] sums = new double[diagonal.length];
      for (int i = 0; i < of.length; i++) {
        sums[cells.column()[i]] += precision[i] * (of[i] - rows[cells.row()[i]]);
      }
      return sums;
    }

    double[] spread(double[] columns) {
      double[] of = new double[precision.length];
      Arrays.setAll(of, i -> columns[cells.column()[i]]);
      return of;
    }

    double[][] information(double between) {
      double[][] matrix = new double[diagonal.length][diagonal.length];
      for (int[] row : CrossedCells.groups(cells.row(), cells.rows())) {
        for (int a : row) {
          for (int b : row) {
            matrix[cells.column()[a]][cells.column()[b]] -=
                precision[a] * precision[b] / rowPrecision[cells.row()[a]];
          }
          matrix[cells.column()[a]][cells.column()[a]] += precision[a];
        }
      }
      for (int column = 0; column < matrix.length; column++) {
        matrix[column][column] += 1 / between;
      }
      return matrix;
    }
  }

  static CrossedFit of(CrossedCells cells) {
    double between = BETWEEN * BETWEEN;
    double interaction = INTERACTION * INTERACTION;
    CrossedFit fit = at(cells, between, interaction);
    for (int step = 0; step < MOST_STEPS; step++) {
      CrossedFit next = fit.better(cells);
      boolean reached =
          Math.abs(next.between - fit.between) < REACHED * fit.between
              && Math.abs(next.interaction - fit.interaction) < REACHED * fit.interaction;
      fit = next;
      if (reached) {
        break;
      }
    }
    return fit;
  }

  private static CrossedFit at(CrossedCells cells, double between, double interaction) {
    Weighed weighed = Weighed.of(cells, interaction);
    double[] sums = weighed.columnSums(cells.mean());
    if (cells.columns() <= EXACT) {
      NewtonAscent.Inverse inverse =
          NewtonAscent.Inverse.of(weighed.information(between)).orElseThrow();
      return new CrossedFit(
          inverse.matrix().operate(sums), inverse.matrix().getData(), between, interaction);
    }
    double[][] errors = new double[cells.columns()][1];
    for (int column = 0; column < errors.length; column++) {
      errors[column][0] = 1 / (weighed.diagonal()[column] + 1 / between);
    }
    return new CrossedFit(solved(weighed, sums, between), errors, between, interaction);
  }

  private static double[] solved(Weighed weighed, double[] sums, double between) {
    RealLinearOperator information =
        new RealLinearOperator() {
          @Override
          public int getRowDimension() {
            return sums.length;
          }

          @Override
          public int getColumnDimension() {
            return sums.length;
          }

          @Override
          public RealVector operate(RealVector x) {
            double[] columns = x.toArray();
            return new ArrayRealVector(weighed.columnSums(weighed.spread(columns)), false)
                .add(x.mapDivide(between));
          }
        };
    double[] diagonal = weighed.diagonal().clone();
    for (int column = 0; column < diagonal.length; column++) {
      diagonal[column] += 1 / between;
    }
    return new ConjugateGradient(MOST_SOLVING, SOLVED, false)
        .solve(
            information,
            new JacobiPreconditioner(diagonal, false),
            new ArrayRealVector(sums, false))
        .toArray();
  }

  /** At the variances that the effects speak for. */
  private CrossedFit better(CrossedCells cells) {
    double trace = 0;
    double squares = 0;
    for (int column = 0; column < effects.length; column++) {
      trace += error(column, column);
      squares += effects[column] * effects[column];
    }
    double known = effects.length - trace / between;
    double columns =
        (squares + BETWEEN_WEIGHT * BETWEEN * BETWEEN) / (Math.max(0, known) + BETWEEN_WEIGHT);
    return at(cells, columns, cellVariance(cells, known));
  }

  /**
   * @param known how many columns' worth of the cells the columns take up
   */
  private double cellVariance(CrossedCells cells, double known) {
    Weighed weighed = Weighed.of(cells, interaction);
    double[] left = weighed.spread(effects);
    for (int i = 0; i < left.length; i++) {
      left[i] = cells.mean()[i] - left[i];
    }
    double[] rows = weighed.rowMeans(left);
    long met = Arrays.stream(weighed.rowPrecision()).filter(sum -> sum > 0).count();
    double free = Math.max(0, cells.size() - met - known) / Math.max(1, cells.size());
    double squares = 0;
    double share = 0;
    for (int i = 0; i < left.length; i++) {
      double weight = interaction * weighed.precision()[i];
      squares += Math.pow(weight * (left[i] - rows[cells.row()[i]]), 2);
      share += weight * free;
    }
    return (squares + INTERACTION_WEIGHT * INTERACTION * INTERACTION)
        / (share + INTERACTION_WEIGHT);
  }

  /** Covariance of the errors of two columns. */
  double error(int column, int other) {
    if (errors.length <= EXACT) {
      return errors[column][other];
    }
    return column == other ? errors[column][0] : 0;
  }
}
