package club.emberwell.stats;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/**
 * Against R's documented example t.test(extra ~ group, data = sleep), Student's data of 1908; the
 * printed figures are from memory. The values are exponentiated, so that the logs are Student's.
 */
class RatioTest {
  private static final double[] FIRST = exp(0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0);
  private static final double[] SECOND = exp(1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4);

  @Test
  void pairedRatiosAgreeWithStudentsSleepData() {
    Ratio ratio = Ratio.paired(FIRST, SECOND).orElseThrow();
    assertEquals(Ratio.Kind.PAIRED, ratio.kind());
    assertEquals(10, ratio.n());
    assertEquals(-1.58, Math.log(ratio.ratio()), 1e-12);
    assertEquals(-2.4598858, Math.log(ratio.interval().low()), 5e-8);
    assertEquals(-0.7001142, Math.log(ratio.interval().high()), 5e-8);
    assertEquals(0.002833, ratio.pValue(), 5e-7);
  }

  @Test
  void unpairedRatiosAgreeWithWelchOnTheSameData() {
    Ratio ratio = Ratio.unpaired(FIRST, SECOND).orElseThrow();
    assertEquals(Ratio.Kind.UNPAIRED, ratio.kind());
    assertEquals(17.776, ratio.degrees(), 5e-4);
    assertEquals(-3.3654832, Math.log(ratio.interval().low()), 5e-8);
    assertEquals(0.2054832, Math.log(ratio.interval().high()), 5e-8);
    assertEquals(0.07939, ratio.pValue(), 5e-6);
  }

  @Test
  void aRatioNeedsThreePairsOrTwoMembersOnEachSide() {
    double[] two = {1, 2};
    assertTrue(Ratio.paired(two, two).isEmpty());
    assertTrue(Ratio.unpaired(two, new double[] {1}).isEmpty());
    assertTrue(Ratio.unpaired(new double[0], new double[0]).isEmpty());
    double[] three = {1, 2, 3};
    assertEquals(1, Ratio.paired(three, three).orElseThrow().pValue());
    assertEquals(0, Ratio.paired(new double[] {2, 2, 2}, new double[] {1, 1, 1}).get().pValue());
    assertThrows(IllegalArgumentException.class, () -> Ratio.paired(new double[] {-1}, two));
  }

  @Test
  void holmsStepsAreThoseOfHisRule() {
    // by hand: 4 x 0.01, 3 x 0.02, then never falling: 2 x 0.03 = 0.06, 1 x 0.04 < 0.06
    double[] adjusted = Holm.adjust(new double[] {0.04, 0.01, 0.03, 0.02});
    assertArrayEquals(new double[] {0.06, 0.04, 0.06, 0.06}, adjusted, 1e-15);
    assertArrayEquals(new double[] {1, 1}, Holm.adjust(new double[] {0.9, 0.7}));
    assertEquals(0, Holm.adjust(new double[0]).length);
  }

  private static double[] exp(double... logs) {
    return Arrays.stream(logs).map(Math::exp).toArray();
  }
}
