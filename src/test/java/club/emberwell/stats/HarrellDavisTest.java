package club.emberwell.stats;

import static club.emberwell.stats.CheckValues.assertClose;
import static club.emberwell.stats.CheckValues.vector;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.aggregator.ArgumentsAccessor;
import org.junit.jupiter.params.provider.CsvFileSource;

class HarrellDavisTest {

  @ParameterizedTest(name = "{0}")
  @CsvFileSource(resources = "/reference/statistics/harrell_davis.csv", numLinesToSkip = 1)
  void quantilesAgreeWithR(ArgumentsAccessor row) {
    double[] values = vector(row.getString(2));
    double[] p = {0.1, 0.25, 0.5, 0.75, 0.9};
    for (int i = 0; i < p.length; i++) {
      double found = HarrellDavis.quantile(values, p[i]);
      // the incomplete beta functions of R and of the library agree to about 1e-13
      assertClose(row.getDouble(3 + i), found, 1e-11, "p " + p[i]);
    }
  }

  @Test
  void noneIsNothingAndOneIsItself() {
    assertTrue(Double.isNaN(HarrellDavis.quantile(new double[0], 0.5)));
    assertEquals(4, HarrellDavis.quantile(new double[] {4}, 0.3), 1e-15);
  }
}
