package club.emberwell.stats;

import static club.emberwell.stats.CheckValues.assertClose;
import static club.emberwell.stats.CheckValues.vector;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.aggregator.ArgumentsAccessor;
import org.junit.jupiter.params.provider.CsvFileSource;

class DipTestTest {
  @ParameterizedTest(name = "{0}")
  @CsvFileSource(resources = "/reference/statistics/dip_test.csv", numLinesToSkip = 1)
  void dipsAndTheirChancesAgreeWithRToTheLastDigit(ArgumentsAccessor row) {
    DipTest found = DipTest.of(vector(row.getString(2))).orElseThrow();
    assertClose(row.getDouble(3), found.dip(), 1e-12, "dip");
    if (row.getString(0).equals("n4")) {
      // the smallest dip there is: its chance is 1 (R interpolates in tied quantiles: 0.782)
      assertEquals(1, found.pValue());
    } else {
      assertClose(row.getDouble(4), found.pValue(), 1e-12, "p");
    }
  }

  @Test
  void uniformValuesHaveUniformChances() {
    SplittableRandom random = new SplittableRandom(77);
    int below = 0;
    int runs = 4000;
    for (int run = 0; run < runs; run++) {
      double[] values = random.doubles(22 + run % 60).toArray();
      below += DipTest.of(values).orElseThrow().pValue() <= 0.1 ? 1 : 0;
    }
    // standard error 0.005
    assertEquals(0.1, (double) below / runs, 0.015);
  }

  @Test
  void noneIsNothingAndEqualValuesHaveOneMode() {
    assertTrue(DipTest.of(new double[0]).isEmpty());
    assertEquals(new DipTest(0.5, 1), DipTest.of(new double[] {3}).orElseThrow());
    assertEquals(1, DipTest.of(new double[] {3, 3, 3, 3, 3, 3}).orElseThrow().pValue());
    assertThrows(IllegalArgumentException.class, () -> DipTest.of(new double[] {1, Double.NaN, 2}));
  }

  @Test
  void campsAreExplainedByAPropertyOrSaidToBeUnexplained() {
    double[] voices = new double[20];
    String[] lens = new String[20];
    for (int i = 0; i < 20; i++) {
      voices[i] = (i % 2 == 0 ? 1 : 4) * Math.exp(0.01 * i);
      lens[i] = i % 2 == 0 ? "short" : "long";
    }
    Camps explained = Camps.of(voices, Map.of("lens", lens)).orElseThrow();
    assertEquals("lens", explained.split().orElseThrow().property());
    Camps unexplained = Camps.of(voices, Map.of()).orElseThrow();
    assertTrue(unexplained.split().isEmpty());
    assertTrue(unexplained.dip().orElseThrow().pValue() <= Camps.LEVEL);
  }

  @Test
  void equalValuesAloneAreNoCampsAndFewVoicesAreNotTested() {
    double[] tied = new double[20];
    for (int i = 0; i < 20; i++) {
      tied[i] = i < 12 ? 2 : 2 + 0.1 * i;
    }
    assertTrue(Camps.of(tied, Map.of()).isEmpty());
    assertTrue(Camps.of(new double[] {1, 1.1, 1.2, 9, 9.1, 9.2}, Map.of()).isEmpty());
    assertTrue(Camps.of(new double[0], Map.of()).isEmpty());
  }
}
