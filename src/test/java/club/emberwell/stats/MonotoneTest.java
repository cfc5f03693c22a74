package club.emberwell.stats;

import static club.emberwell.stats.CheckValues.CLOSED_FORM;
import static club.emberwell.stats.CheckValues.assertClose;
import static club.emberwell.stats.CheckValues.vector;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.aggregator.ArgumentsAccessor;
import org.junit.jupiter.params.provider.CsvFileSource;

class MonotoneTest {

  @ParameterizedTest(name = "{0}")
  @CsvFileSource(resources = "/reference/statistics/isotonic.csv", numLinesToSkip = 1)
  void risingFallingAndUnimodalFitsAgreeWithR(ArgumentsAccessor row) {
    double[] y = vector(row.getString(1));
    double[] w = vector(row.getString(2));
    double[] ones = y.clone();
    Arrays.fill(ones, 1);
    assertClose(vector(row.getString(3)), Isotonic.increasing(y, w), CLOSED_FORM, "rising");
    assertClose(vector(row.getString(4)), Isotonic.increasing(y, ones), CLOSED_FORM, "unweighted");
    assertClose(vector(row.getString(5)), Isotonic.decreasing(y, w), CLOSED_FORM, "falling");
    Isotonic.Unimodal unimodal = Isotonic.unimodal(y, w);
    assertClose(row.getDouble(6), unimodal.squaredError(), CLOSED_FORM, "error");
    assertClose(vector(row.getString(7)), unimodal.fit(), CLOSED_FORM, "unimodal");
  }

  @ParameterizedTest(name = "{0}")
  @CsvFileSource(resources = "/reference/statistics/spearman_karber.csv", numLinesToSkip = 1)
  void theMeanToleranceAgreesWithR(ArgumentsAccessor row) {
    double[] x = vector(row.getString(1));
    double[] successes = vector(row.getString(2));
    double[] trials = vector(row.getString(3));
    assertClose(
        vector(row.getString(4)),
        SpearmanKarber.shares(x, successes, trials),
        CLOSED_FORM,
        "shares");
    Optional<SpearmanKarber> found = SpearmanKarber.of(x, successes, trials);
    assertEquals(row.getInteger(8) == 1, found.isPresent());
    found.ifPresent(
        estimate -> {
          assertClose(row.getDouble(5), estimate.mean(), CLOSED_FORM, "mean");
          assertClose(row.getDouble(6), estimate.variance(), CLOSED_FORM, "variance");
          assertClose(row.getDouble(7), estimate.error(), CLOSED_FORM, "error");
        });
  }

  @Test
  void noValuesAreNoTrouble() {
    double[] none = new double[0];
    assertEquals(0, Isotonic.increasing(none, none).length);
    assertEquals(0, Isotonic.unimodal(none, none).squaredError());
    assertTrue(SpearmanKarber.of(none, none, none).isEmpty());
    double[] one = {1};
    assertTrue(SpearmanKarber.of(one, one, one).isEmpty());
    assertThrows(
        IllegalArgumentException.class,
        () -> SpearmanKarber.of(new double[] {2, 1}, new double[2], new double[] {1, 1}));
  }
}
