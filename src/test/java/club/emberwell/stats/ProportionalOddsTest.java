package club.emberwell.stats;

import static club.emberwell.stats.CheckValues.assertClose;
import static club.emberwell.stats.CheckValues.integers;
import static club.emberwell.stats.CheckValues.number;
import static club.emberwell.stats.CheckValues.rows;
import static club.emberwell.stats.CheckValues.vector;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.aggregator.ArgumentsAccessor;
import org.junit.jupiter.params.provider.CsvFileSource;

class ProportionalOddsTest {
  private static final double TOLERANCE = 1e-6;

  @Test
  void theHousingDataOfMassAgree() {
    List<String[]> data = rows("proportional_odds_housing_data.csv");
    double[][] x = new double[data.size()][];
    int[] grades = new int[data.size()];
    double[] weights = new double[data.size()];
    for (int i = 0; i < x.length; i++) {
      String[] c = data.get(i);
      grades[i] = List.of("Low", "Medium", "High").indexOf(c[0]);
      x[i] =
          new double[] {
            is(c[1], "Medium"),
            is(c[1], "High"),
            is(c[2], "Apartment"),
            is(c[2], "Atrium"),
            is(c[2], "Terrace"),
            is(c[3], "High")
          };
      weights[i] = number(c[4]);
    }
    check("housing", ProportionalOdds.fit(x, grades, 3, weights).orElseThrow());
  }

  @Test
  void theWineDataOfOrdinalAgree() {
    List<String[]> data = rows("proportional_odds_wine_data.csv");
    double[][] x = new double[data.size()][];
    int[] grades = new int[data.size()];
    for (int i = 0; i < x.length; i++) {
      String[] c = data.get(i);
      grades[i] = Integer.parseInt(c[0]) - 1;
      x[i] = new double[] {is(c[1], "warm"), is(c[2], "yes")};
    }
    check("wine", ProportionalOdds.fit(x, grades, 5, ones(x.length)).orElseThrow());
  }

  @ParameterizedTest(name = "{0}")
  @CsvFileSource(
      resources = "/reference/statistics/proportional_odds_window.csv",
      numLinesToSkip = 1)
  void theWindowOfThreeGradesAgreesWithR(ArgumentsAccessor row) {
    double[][] x =
        Arrays.stream(vector(row.getString(2)))
            .mapToObj(v -> new double[] {v})
            .toArray(double[][]::new);
    ProportionalOdds.Fit fit =
        ProportionalOdds.fit(x, integers(row.getString(3)), 3, ones(x.length)).orElseThrow();
    for (int j = 0; j < 2; j++) {
      assertClose(row.getDouble(4 + j), fit.thresholds()[j], TOLERANCE, "threshold");
      assertClose(row.getDouble(11 + j), fit.edge(j), TOLERANCE, "edge");
    }
    assertClose(row.getDouble(6), fit.coefficients()[0], TOLERANCE, "beta");
    for (int j = 0; j < 3; j++) {
      assertClose(row.getDouble(7 + j), fit.error(j), TOLERANCE, "error");
    }
    double peak = (fit.edge(0) + fit.edge(1)) / 2;
    assertClose(row.getDouble(13), peak, TOLERANCE, "peak");
    assertClose(row.getDouble(14), fit.probabilities(peak)[1], TOLERANCE, "P at the peak");
    double[] at = vector(row.getString(15));
    for (int grade = 0; grade < 3; grade++) {
      double[] expected = vector(row.getString(16 + grade));
      for (int i = 0; i < at.length; i++) {
        assertClose(expected[i], fit.probabilities(at[i])[grade], TOLERANCE, "P" + grade);
      }
    }
  }

  @Test
  void aMissingGradeAndSeparatedGradesHaveNoEstimate() {
    double[][] x = {{1}, {2}, {3}, {4}, {5}, {6}};
    double[] ones = ones(6);
    assertTrue(ProportionalOdds.fit(new double[0][], new int[0], 3, new double[0]).isEmpty());
    assertTrue(ProportionalOdds.fit(x, new int[] {0, 0, 1, 0, 1, 1}, 3, ones).isEmpty());
    assertTrue(ProportionalOdds.fit(x, new int[] {0, 0, 1, 1, 2, 2}, 3, ones).isEmpty());
  }

  private static void check(String name, ProportionalOdds.Fit fit) {
    int i = 0;
    for (String[] row : rows("proportional_odds_expected.csv")) {
      if (row[0].equals(name)) {
        int j = i - fit.thresholds().length;
        double estimate = j < 0 ? fit.thresholds()[i] : fit.coefficients()[j];
        assertClose(number(row[2]), estimate, TOLERANCE, row[1]);
        assertClose(number(row[3]), fit.error(i), TOLERANCE, row[1]);
        i++;
      }
    }
  }

  private static double is(String cell, String level) {
    return cell.equals(level) ? 1 : 0;
  }

  private static double[] ones(int n) {
    double[] ones = new double[n];
    Arrays.fill(ones, 1);
    return ones;
  }
}
