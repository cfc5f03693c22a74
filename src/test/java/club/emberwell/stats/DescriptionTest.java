package club.emberwell.stats;

import static club.emberwell.stats.CheckValues.CLOSED_FORM;
import static club.emberwell.stats.CheckValues.assertClose;
import static club.emberwell.stats.CheckValues.number;
import static club.emberwell.stats.CheckValues.vector;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.aggregator.ArgumentsAccessor;
import org.junit.jupiter.params.provider.CsvFileSource;

class DescriptionTest {

  @ParameterizedTest(name = "{0} {3}")
  @CsvFileSource(resources = "/reference/statistics/quantile_hyndman_fan.csv", numLinesToSkip = 1)
  void theTwoTypesOfQuantilesInUseAgreeWithR(ArgumentsAccessor row) {
    double[] values = vector(row.getString(2));
    double p = row.getDouble(3);
    double type8 = number(row.getString(11));
    assertClose(type8, Quantiles.describe(values, p)[0], CLOSED_FORM, "description");
    assertClose(number(row.getString(9)), nextMember(values, p), CLOSED_FORM, "type 6");
  }

  /** With one trial a member the positions of member-weighted trials are those of type 6. */
  private static double nextMember(double[] values, double p) {
    int[] single = new int[values.length];
    Arrays.fill(single, 1);
    // the first of the two falls back on the least, the second on the largest
    return WeightedTrials.of(single, values, values.length).quantiles(p, p)[p < 0.5 ? 0 : 1];
  }

  @ParameterizedTest(name = "{0}")
  @CsvFileSource(resources = "/reference/statistics/summary.csv", numLinesToSkip = 1)
  void meansAndDeviationsAgreeWithR(ArgumentsAccessor row) {
    double[] values = vector(row.getString(2));
    assertClose(row.getDouble(3), Summary.mean(values), CLOSED_FORM, "mean");
    assertClose(row.getDouble(4), Summary.standardDeviation(values), CLOSED_FORM, "sd");
    assertClose(row.getDouble(7), Quantiles.median(values), CLOSED_FORM, "median");
    Quantiles.Seven seven = Quantiles.seven(values);
    assertClose(row.getDouble(9), seven.p75() - seven.p25(), CLOSED_FORM, "IQR 8");
  }

  @ParameterizedTest(name = "{0}")
  @CsvFileSource(
      resources = "/reference/statistics/nist_strd_univariate_certified.csv",
      numLinesToSkip = 1)
  void meanAndDeviationEqualTheCertifiedValuesOfNist(ArgumentsAccessor row) {
    double[] values = dataset(row.getString(0));
    assertEquals(row.getInteger(1), values.length);
    assertEquals(certified(row.getString(2)), digits(Summary.mean(values)), "mean");
    assertEquals(certified(row.getString(3)), digits(Summary.standardDeviation(values)), "sd");
    assertClose(row.getDouble(4), Quantiles.median(values), CLOSED_FORM, "median");
    assertClose(row.getDouble(6), Quantiles.describe(values, 0.25)[0], CLOSED_FORM, "type 8");
    assertClose(row.getDouble(7), ModifiedZ.of(values).mad(), CLOSED_FORM, "MAD");
  }

  @Test
  void nothingGivesNothingAndOneValueIsEveryQuantile() {
    assertTrue(Double.isNaN(Quantiles.median(new double[0])));
    assertTrue(Double.isNaN(Quantiles.seven(new double[0]).p90()));
    assertTrue(Double.isNaN(Summary.mean(new double[0])));
    assertTrue(Double.isNaN(Summary.standardDeviation(new double[] {3})));
    assertEquals(new Quantiles.Seven(3, 3, 3, 3, 3, 3, 3), Quantiles.seven(new double[] {3}));
    assertEquals(3, Summary.mean(new double[] {3}));
  }

  @Test
  void notANumberIsRefusedEverywhere() {
    double[] bad = {1, Double.NaN, 2};
    assertThrows(IllegalArgumentException.class, () -> Quantiles.median(bad));
    assertThrows(IllegalArgumentException.class, () -> Summary.mean(bad));
    assertThrows(IllegalArgumentException.class, () -> MedianInterval.of(bad));
    assertThrows(
        IllegalArgumentException.class, () -> NextMemberInterval.band(new int[] {1, 1, 1}, bad));
  }

  private static double[] dataset(String name) {
    return CheckValues.rows("nist_strd_univariate_data.csv").stream()
        .filter(cells -> cells[0].equals(name))
        .mapToDouble(cells -> number(cells[2]))
        .toArray();
  }

  /** NIST certifies 15 significant digits. */
  private static BigDecimal certified(String cell) {
    return new BigDecimal(cell).stripTrailingZeros();
  }

  private static BigDecimal digits(double value) {
    return new BigDecimal(value).round(new MathContext(15)).stripTrailingZeros();
  }
}
