package club.emberwell.stats;

import static club.emberwell.stats.CheckValues.assertClose;
import static club.emberwell.stats.CheckValues.number;
import static club.emberwell.stats.CheckValues.rows;
import static club.emberwell.stats.CheckValues.vector;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.aggregator.ArgumentsAccessor;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.MethodSource;

class RandomEffectsTest {
  private static final double TOLERANCE = 1e-7;

  static Stream<Arguments> pauleAndMandel() {
    return rows("random_effects.csv").stream()
        .filter(row -> row[1].equals("PM"))
        .map(row -> Arguments.of(row[0], row));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("pauleAndMandel")
  void theMethodOfPauleAndMandelAgreesWithMetafor(String name, String[] row) {
    RandomEffects found = RandomEffects.of(vector(row[3]), vector(row[4])).orElseThrow();
    assertEquals(Integer.parseInt(row[2]), found.k());
    assertClose(number(row[5]), found.mean(), TOLERANCE, "mean");
    assertClose(number(row[6]), found.error(), TOLERANCE, "error");
    assertClose(number(row[9]), found.tau2(), TOLERANCE, "tau2");
  }

  /** metafor's documentation of confint.rma.uni prints 0.1197 and 1.1115 for the BCG trials. */
  @Test
  void theIntervalOfTheVarianceBetweenIsThatOfMetafor() {
    String[] bcg =
        rows("random_effects.csv").stream()
            .filter(row -> row[0].equals("bcg_logRR") && row[1].equals("PM"))
            .findFirst()
            .orElseThrow();
    Interval found = RandomEffects.tau2Interval(vector(bcg[3]), vector(bcg[4])).orElseThrow();
    assertEquals(0.1197, found.low(), 5e-5);
    assertEquals(1.1115, found.high(), 5e-5);
    double[] alike = {1, 1, 1};
    assertEquals(new Interval(0, 0, 0.95), RandomEffects.tau2Interval(alike, alike).orElseThrow());
  }

  @ParameterizedTest(name = "{0}")
  @CsvFileSource(resources = "/reference/statistics/shrinkage_blup.csv", numLinesToSkip = 1)
  void shrunkenValuesAgreeWithMetafor(ArgumentsAccessor row) {
    double[] y = vector(row.getString(1));
    double[] v = vector(row.getString(2));
    double tau2 = row.getDouble(4);
    double error = Math.sqrt(1 / Arrays.stream(v).map(variance -> 1 / (variance + tau2)).sum());
    RandomEffects parent = new RandomEffects(y.length, row.getDouble(3), error, tau2);
    for (int i = 0; i < y.length; i++) {
      Shrinkage shrunk = Shrinkage.of(y[i], v[i], parent);
      assertClose(vector(row.getString(5))[i], shrunk.value(), TOLERANCE, "value " + i);
      assertClose(vector(row.getString(6))[i], shrunk.error(), TOLERANCE, "error " + i);
      assertClose(vector(row.getString(7))[i], shrunk.weightOnOwn(), TOLERANCE, "weight " + i);
    }
  }

  @Test
  void noneAndOneEstimateClaimNoDifferenceBetweenMembers() {
    assertTrue(RandomEffects.of(new double[0], new double[0]).isEmpty());
    RandomEffects one = RandomEffects.of(new double[] {2}, new double[] {0.25}).orElseThrow();
    assertEquals(2, one.mean());
    assertEquals(0.5, one.error());
    assertEquals(1, one.factor());
    double[] single = {2};
    assertTrue(RandomEffects.tau2Interval(single, single).isEmpty());
    assertThrows(
        IllegalArgumentException.class, () -> RandomEffects.of(new double[] {1}, new double[] {0}));
  }
}
