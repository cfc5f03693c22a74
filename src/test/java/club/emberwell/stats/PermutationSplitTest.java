package club.emberwell.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Exact chances are counted by hand; the level of the test is checked by simulation. */
class PermutationSplitTest {

  @Test
  void threeAgainstThreeFarApartHaveAChanceOfTwoInTwenty() {
    double[] voices = {1, 2, 3, 10, 11, 12};
    String[] air = {"on", "on", "on", "off", "off", "off"};
    PermutationSplit split = PermutationSplit.of(voices, Map.of("air assist", air)).get(0);
    assertEquals(List.of("on"), split.low());
    assertEquals(List.of("off"), split.high());
    // 6 choose 3 = 20 arrangements; this one and its mirror are the farthest apart
    assertEquals(0.1, split.pValue(), 1e-15);
    assertEquals(Math.cbrt(1320.0 / 6), split.ratio(), 1e-12);
  }

  @Test
  void labelsOfThreeKindsArePartedWhereTheirMeansAreFarthestApart() {
    double[] voices = {1, 1.1, 9, 10, 1.2, 1.05, 0.95, 9.5};
    String[] maker = {"a", "a", "b", "b", "c", "c", "c", "b"};
    PermutationSplit split = PermutationSplit.of(voices, Map.of("supplier", maker)).get(0);
    assertEquals(List.of("a", "c"), split.low());
    assertEquals(List.of("b"), split.high());
    assertEquals(5, split.lowVoices());
    assertEquals(3, split.highVoices());

    assertTrue(split.pValue() < 0.05, "p " + split.pValue());
  }

  @Test
  void severalPropertiesAreAdjustedAndTheClearestComesFirst() {
    double[] voices = {1, 1.1, 1.2, 1.3, 1.4, 8, 9, 10, 11, 12};
    String[] lens = {"s", "s", "s", "s", "s", "l", "l", "l", "l", "l"};
    String[] other = {"x", "y", "x", "y", "x", "y", "x", "y", "x", null};
    var splits = PermutationSplit.of(voices, Map.of("lens", lens, "other", other));
    assertEquals("lens", splits.get(0).property());
    assertEquals(2.0 / 252, splits.get(0).pValue(), 1e-15);
    assertEquals(4.0 / 252, splits.get(0).adjusted(), 1e-15);
    assertEquals(9, splits.get(1).lowVoices() + splits.get(1).highVoices());
  }

  @Test
  void aPropertyWithoutTwoVoicesOnEachSideIsNotTested() {
    double[] voices = {1, 2, 3};
    assertTrue(PermutationSplit.of(voices, Map.of("a", new String[3])).isEmpty());
    assertTrue(PermutationSplit.of(voices, Map.of("a", new String[] {"x", "y", "y"})).isEmpty());
    assertTrue(PermutationSplit.of(new double[0], Map.of("a", new String[0])).isEmpty());
  }

  @Test
  void manyVoicesUseTheSameShufflesEachTimeAndKeepTheLevel() {
    SplittableRandom random = new SplittableRandom(4);
    int found = 0;
    int runs = 200;
    for (int run = 0; run < runs; run++) {
      double[] voices = random.doubles(24, 1, 3).toArray();
      String[] labels = new String[24];
      for (int i = 0; i < 24; i++) {
        labels[i] = "abc".substring(i % 3, i % 3 + 1);
      }
      var once = PermutationSplit.of(voices, Map.of("p", labels)).get(0);
      if (run == 0) {
        assertEquals(once, PermutationSplit.of(voices, Map.of("p", labels)).get(0));
      }
      found += once.pValue() <= 0.1 ? 1 : 0;
    }
    // standard error 0.021
    assertEquals(0.1, (double) found / runs, 0.065);
  }
}
