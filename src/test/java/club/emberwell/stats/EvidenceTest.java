package club.emberwell.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The limits are this project's own rule; no outside source. */
class EvidenceTest {

  @ParameterizedTest
  @CsvSource({
    "0, NaN, nothing yet",
    "1, NaN, one voice",
    "2, NaN, two voices",
    "3, NaN, sparse",
    "5, NaN, sparse",
    "6, 1.1, some",
    "8, 1.1, some",
    "9, 2.0, good",
    "9, 2.01, some",
    "9, NaN, some",
    "19, 1.1, good",
    "20, 1.5, strong",
    "20, 1.51, good",
    "20, 2.5, some",
    "500, 1.0, strong"
  })
  void theWordFollowsFromVoicesAndTheIntervalOfTheMedian(int voices, double ratio, String words) {
    assertEquals(words, Evidence.of(voices, ratio, false).words());
  }

  @Test
  void campsSplitAnyEvidence() {
    assertEquals("split", Evidence.of(40, 1.1, true).words());
  }

  @Test
  void voicesAloneDecideWhereNoCampsWereFound() {
    double[] tight = IntStream.range(0, 20).mapToDouble(i -> 10 + i / 10.0).toArray();
    assertEquals(Evidence.STRONG, Evidence.of(tight));
    double[] wide = IntStream.range(0, 9).mapToDouble(i -> Math.pow(2, i)).toArray();
    assertEquals(Evidence.SOME, Evidence.of(wide));
    assertEquals(Evidence.NOTHING_YET, Evidence.of(new double[0]));
  }
}
