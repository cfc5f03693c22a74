package club.emberwell.consensus;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.consensus.range.Spread;
import java.util.Arrays;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** How far one voice or a few can move the middle. The bounds are this project's own promise. */
class SetAsideTest {
  private static final int HONEST = 20;

  /** Honest members around 1 J/mm2 with a spread of exp(0.25), evenly over the distribution. */
  private static MadeTrials honest() {
    MadeTrials made = new MadeTrials();
    NormalDistribution normal = NormalDistribution.of(0, 0.25);
    for (int i = 0; i < HONEST; i++) {
      made.by(i + 1L).dose(Math.exp(normal.inverseCumulativeProbability((i + 0.5) / HONEST)));
    }
    return made;
  }

  private static double median(MadeTrials made) {
    return made.range().dose().quantiles().orElseThrow().median();
  }

  private static double moved(MadeTrials made) {
    return Math.abs(median(made) / median(honest()) - 1);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.02, 0.3, 0.7, 1.3, 2, 5, 60})
  void oneProlificMemberMovesTheMiddleByLessThanFivePercent(double factor) {
    MadeTrials made = honest();
    for (int report = 0; report < 250; report++) {
      made.by(1000).dose(factor * (1 + report / 1000.0));
    }
    assertTrue(moved(made) < 0.05, factor + ": " + moved(made));
    assertEquals(HONEST + 1, made.range().counts().voices());
  }

  @ParameterizedTest
  @ValueSource(doubles = {60, 1 / 60.0})
  void aUnitTypoOf60xIsSetAsideNamedCountedApartAndMovesTheMiddleByLessThanFivePercent(
      double slip) {
    MadeTrials made = honest();
    made.by(1000).dose(slip);
    Spread dose = made.range().dose();
    assertTrue(moved(made) < 0.05, "" + moved(made));
    assertEquals(1, dose.aside().size());
    assertEquals(1000, dose.aside().members()[0]);
    assertEquals(slip, dose.aside().values()[0], 1e-12);
    assertEquals(HONEST, dose.voices().size());
    assertEquals(HONEST, dose.n());
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.1, 0.4, 0.7, 1.3, 2, 3, 5, 10, 100})
  void fiveFakeAccountsWithFewReportsMoveTheMiddleByLessThanTenPercent(double factor) {
    MadeTrials made = honest();
    for (int account = 0; account < 5; account++) {
      for (int report = 0; report < 3; report++) {
        made.by(1000 + account).dose(factor * (1 + account / 100.0));
      }
    }
    assertTrue(moved(made) < 0.10, factor + ": " + moved(made));
  }

  @Test
  void withFewerThanEightVoicesNothingIsSetAside() {
    MadeTrials made = MadeTrials.ofVoices(1, 1.1, 1.2, 60);
    assertEquals(0, made.range().dose().aside().size());
    assertEquals(60, Arrays.stream(made.range().dose().voices().values()).max().orElseThrow());
  }
}
