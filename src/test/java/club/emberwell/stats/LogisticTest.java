package club.emberwell.stats;

import static club.emberwell.stats.CheckValues.assertClose;
import static club.emberwell.stats.CheckValues.number;
import static club.emberwell.stats.CheckValues.rows;
import static club.emberwell.stats.CheckValues.vector;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class LogisticTest {
  private static final double FIRTH = 1e-6;

  static Stream<Arguments> penalised() {
    return rows("logistic_dose.csv").stream()
        .filter(row -> row[1].equals("FIRTH"))
        .map(row -> Arguments.of(row[0], row));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("penalised")
  void penalisedCurvesAgreeWithRWhereTheDataAreSeparatedToo(String name, String[] row) {
    boolean quadratic = row[5].endsWith("x2");
    double[][] x = terms(vector(row[2]), quadratic);
    double[] successes = vector(row[3]);
    double[] trials = vector(row[4]);
    FirthLogit.Fit fit = FirthLogit.fit(x, successes, trials).orElseThrow();
    double[] coefficients = vector(row[7]);
    assertClose(coefficients, fit.coefficients(), FIRTH, "coefficients");
    assertClose(vector(row[9]), lower(fit.covariance()), FIRTH, "covariance");
    double[][] at = terms(vector(row[13]), quadratic);
    double[] probabilities = Arrays.stream(at).mapToDouble(fit::probability).toArray();
    assertClose(vector(row[14]), probabilities, FIRTH, "probabilities");
  }

  @Test
  void theEndometrialDataOfHeinzeAndSchemperAgree() {
    List<String[]> data = rows("firth_endometrial_data.csv");
    double[][] x = new double[data.size()][];
    double[] grade = new double[data.size()];
    double[] ones = new double[data.size()];
    for (int i = 0; i < x.length; i++) {
      String[] cells = data.get(i);
      x[i] = new double[] {1, number(cells[0]), number(cells[1]), number(cells[2])};
      grade[i] = number(cells[3]);
      ones[i] = 1;
    }
    FirthLogit.Fit fit = FirthLogit.fit(x, grade, ones).orElseThrow();
    List<String[]> expected = rows("firth_endometrial_expected.csv");
    for (int i = 0; i < expected.size(); i++) {
      assertClose(number(expected.get(i)[1]), fit.coefficients()[i], FIRTH, expected.get(i)[0]);
      assertClose(
          number(expected.get(i)[2]), Math.sqrt(fit.covariance()[i][i]), FIRTH, expected.get(i)[0]);
    }
  }

  @Test
  void repeatingEveryTrialIsTheSameAsWeightingIt() {
    double[] x = {0, 1, 2, 3};
    FirthLogit.Fit weighted =
        FirthLogit.fit(terms(x, false), new double[] {0, 2, 0, 3}, new double[] {1, 2, 1, 3})
            .orElseThrow();
    FirthLogit.Fit repeated =
        FirthLogit.fit(
                terms(new double[] {0, 1, 1, 2, 3, 3, 3}, false),
                new double[] {0, 1, 1, 0, 1, 1, 1},
                new double[] {1, 1, 1, 1, 1, 1, 1})
            .orElseThrow();
    assertClose(repeated.coefficients(), weighted.coefficients(), FIRTH, "coefficients");
  }

  @Test
  void nothingAndOneDoseHaveNoCurve() {
    assertTrue(FirthLogit.fit(new double[0][], new double[0], new double[0]).isEmpty());
    double[] one = {1};
    assertTrue(FirthLogit.fit(terms(one, false), one, one).isEmpty());
    assertThrows(
        IllegalArgumentException.class,
        () -> FirthLogit.fit(terms(new double[] {Double.NaN}, false), one, one));
  }

  private static double[][] terms(double[] x, boolean quadratic) {
    return Arrays.stream(x)
        .mapToObj(v -> quadratic ? new double[] {1, v, v * v} : new double[] {1, v})
        .toArray(double[][]::new);
  }

  private static double[] lower(double[][] matrix) {
    double[] lower = new double[matrix.length * (matrix.length + 1) / 2];
    int n = 0;
    for (int column = 0; column < matrix.length; column++) {
      for (int row = column; row < matrix.length; row++) {
        lower[n++] = matrix[row][column];
      }
    }
    return lower;
  }

  /** Scoring steps of weighted trials can overshoot from side to side for hundreds of steps. */
  @Test
  void everyWeightedSampleOfTwoGradesHasAPenalisedFit() {
    SplittableRandom random = new SplittableRandom(20261125);
    for (int run = 0; run < 5_000; run++) {
      int n = 3 + random.nextInt(6);
      double[] x = new double[n];
      double[] weights = new double[n];
      double[] successes = new double[n];
      for (int i = 0; i < n; i++) {
        x[i] = random.nextGaussian();
        weights[i] = random.nextDouble(0.3, 1.3);
        successes[i] = random.nextBoolean() ? weights[i] : 0;
      }
      assertTrue(FirthLogit.fit(terms(x, false), successes, weights).isPresent(), "run " + run);
    }
  }

  /** Columns about their mean: their products sum to next to nothing, and must do so evenly. */
  @Test
  void weightedColumnsAboutTheirMeanHaveAFit() {
    SplittableRandom random = new SplittableRandom(20261126);
    for (int run = 0; run < 500; run++) {
      int n = 12;
      double[][] rows = new double[n][];
      double[] weights = new double[n];
      double[] successes = new double[n];
      for (int i = 0; i < n; i++) {
        double within = (i % 2 == 0 ? 1 : -1) * (0.1 + i / 2);
        rows[i] = new double[] {1, within, i / 6 - 0.5};
        weights[i] = i / 6 == 0 ? 1.1 : 0.9;
        successes[i] = within + random.nextGaussian() > 0 ? weights[i] : 0;
      }
      assertTrue(FirthLogit.fit(rows, successes, weights).isPresent(), "run " + run);
    }
  }
}
