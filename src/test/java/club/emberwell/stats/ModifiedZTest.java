package club.emberwell.stats;

import static club.emberwell.stats.CheckValues.CLOSED_FORM;
import static club.emberwell.stats.CheckValues.assertClose;
import static club.emberwell.stats.CheckValues.vector;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.aggregator.ArgumentsAccessor;
import org.junit.jupiter.params.provider.CsvFileSource;

class ModifiedZTest {

  @ParameterizedTest(name = "{0} {1}")
  @CsvFileSource(resources = "/reference/statistics/mad_modified_z.csv", numLinesToSkip = 1)
  void scoresAgreeWithRAndTheRuleOfIglewiczAndHoaglin(ArgumentsAccessor row) {
    double[] values = vector(row.getString(3));
    boolean logs = row.getString(1).equals("log");
    ModifiedZ found = logs ? ModifiedZ.ofLogs(values) : ModifiedZ.of(values);
    assertClose(row.getDouble(4), found.median(), CLOSED_FORM, "median");
    assertClose(row.getDouble(5), found.mad(), CLOSED_FORM, "MAD");
    assertClose(row.getDouble(7), found.meanDeviation(), CLOSED_FORM, "mean deviation");
    assertEquals(row.getString(8), found.rule().name());
    assertClose(vector(row.getString(9)), found.z(), CLOSED_FORM, "z");
    double[] beyond = vector(row.getString(10));
    for (int i = 0; i < beyond.length; i++) {
      assertEquals(beyond[i] == 1, found.beyond()[i], "beyond " + i);
      double value = logs ? Math.log(values[i]) : values[i];
      assertClose(vector(row.getString(9))[i], found.score(value), CLOSED_FORM, "score " + i);
    }
  }

  @Test
  void aTenfoldSlipIsSuspectFromEightVoicesOnly() {
    double[] eight = {11, 12, 12.5, 13, 11.8, 12.2, 12.9, 1250};
    boolean[] suspects = ModifiedZ.suspects(eight);
    assertEquals(true, suspects[7]);
    assertEquals(false, suspects[0]);
    assertArrayEquals(new boolean[3], ModifiedZ.suspects(new double[] {1, 1, 1000}));
  }

  @Test
  void noValuesHaveNoScoresAndOneValueScoresZero() {
    assertEquals(ModifiedZ.Rule.EMPTY, ModifiedZ.of(new double[0]).rule());
    ModifiedZ one = ModifiedZ.of(new double[] {4});
    assertArrayEquals(new double[1], one.z());
    assertEquals(0, one.score(4));
    assertEquals(Double.POSITIVE_INFINITY, one.score(4.1));
    assertEquals(Double.NEGATIVE_INFINITY, one.score(3.9));
  }
}
