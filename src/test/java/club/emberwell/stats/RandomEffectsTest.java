package club.emberwell.stats;

import static club.emberwell.stats.CheckValues.assertClose;
import static club.emberwell.stats.CheckValues.number;
import static club.emberwell.stats.CheckValues.vector;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.aggregator.ArgumentsAccessor;
import org.junit.jupiter.params.provider.CsvFileSource;

class RandomEffectsTest {
  private static final double TOLERANCE = 1e-7;
  private static final Map<String, BetweenVariance> METHODS =
      Map.of(
          "FE", BetweenVariance.FIXED,
          "DL", BetweenVariance.DERSIMONIAN_LAIRD,
          "PM", BetweenVariance.PAULE_MANDEL,
          "REML", BetweenVariance.REML,
          "ML", BetweenVariance.ML,
          "HE", BetweenVariance.HEDGES,
          "SJ", BetweenVariance.SIDIK_JONKMAN);

  @ParameterizedTest(name = "{0} {1}")
  @CsvFileSource(resources = "/reference/statistics/random_effects.csv", numLinesToSkip = 1)
  void allSevenMethodsAgreeWithMetafor(ArgumentsAccessor row) {
    BetweenVariance method = METHODS.get(row.getString(1));
    RandomEffects found =
        RandomEffects.of(vector(row.getString(3)), vector(row.getString(4)), method).orElseThrow();
    assertEquals(row.getInteger(2), found.k());
    assertClose(row.getDouble(5), found.mean(), TOLERANCE, "mean");
    assertClose(row.getDouble(6), found.error(), TOLERANCE, "error");
    check(row, 7, found.normalInterval(), "interval");
    assertClose(row.getDouble(10), found.q(), TOLERANCE, "Q");
    assertEquals(row.getDouble(11), found.qP(), TOLERANCE * row.getDouble(11), "p of Q");
    if (method == BetweenVariance.FIXED) {
      assertEquals(0, found.tau2());
      return;
    }
    assertClose(row.getDouble(9), found.tau2(), TOLERANCE, "tau2");
    assertClose(row.getDouble(12), 100 * found.iSquared(), TOLERANCE, "I2");
    double h2 = found.tau2() / found.typicalVariance() + 1;
    assertClose(row.getDouble(13), h2, TOLERANCE, "H2");
    check(row, 14, found.normalPrediction(), "normal prediction");
    assertEquals(!Double.isNaN(number(row.getString(16))), found.prediction().isPresent());
    found.prediction().ifPresent(interval -> check(row, 16, interval, "prediction"));
    assertClose(row.getDouble(18), found.knappHartungError(), TOLERANCE, "Hartung and Knapp");
    check(row, 19, found.interval().orElseThrow(), "their interval");
  }

  @ParameterizedTest(name = "{0}")
  @CsvFileSource(resources = "/reference/statistics/shrinkage_blup.csv", numLinesToSkip = 1)
  void shrunkenValuesAgreeWithMetafor(ArgumentsAccessor row) {
    double[] y = vector(row.getString(1));
    double[] v = vector(row.getString(2));
    RandomEffects parent = RandomEffects.of(y, v, BetweenVariance.REML).orElseThrow();
    assertClose(row.getDouble(3), parent.mean(), TOLERANCE, "mean");
    assertClose(row.getDouble(4), parent.tau2(), TOLERANCE, "tau2");
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
    assertTrue(one.interval().isEmpty());
    assertTrue(one.prediction().isEmpty());
    assertThrows(
        IllegalArgumentException.class, () -> RandomEffects.of(new double[] {1}, new double[] {0}));
  }

  private static void check(ArgumentsAccessor row, int column, Interval found, String what) {
    assertClose(row.getDouble(column), found.low(), TOLERANCE, what + " low");
    assertClose(row.getDouble(column + 1), found.high(), TOLERANCE, what + " high");
  }
}
