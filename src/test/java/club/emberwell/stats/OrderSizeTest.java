package club.emberwell.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.SplittableRandom;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.statistics.distribution.BetaDistribution;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.apache.commons.statistics.distribution.PascalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.aggregator.ArgumentsAccessor;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

/** How many to order so that enough are usable. */
class OrderSizeTest {
  private static final int MOST = 20_000;

  /** Twelve digits are printed. */
  private static final double PRINTED = 1e-11;

  @ParameterizedTest(name = "{0} {1} {2}: {3} at {4}")
  @CsvFileSource(resources = "/reference/statistics/order_size.csv", numLinesToSkip = 1)
  void ordersAndTheirChancesAgreeWithR(ArgumentsAccessor row) {
    boolean known = "known".equals(row.getString(0));
    double a = row.getDouble(1);
    int k = row.getInteger(3);
    double wanted = row.getDouble(4);
    int n = row.getInteger(5);
    UsableCount count = known ? UsableCount.known(a) : new BetaBinomial(a, row.getDouble(2));
    assertEquals(OptionalInt.of(n), count.smallestOrder(k, wanted, MOST));
    assertEquals(row.getDouble(6), count.atLeast(n, k), PRINTED);
    assertEquals(row.getDouble(8), count.atLeast(n - 1, k), PRINTED);
    if (known) {
      PascalDistribution failures = PascalDistribution.of(k, a);
      assertEquals(row.getDouble(7), failures.cumulativeProbability(n - k), PRINTED);
      assertEquals(n, k + failures.inverseCumulativeProbability(wanted));
    }
  }

  @ParameterizedTest
  @CsvSource({"0.5,0.5,30", "9.5,1.5,100", "188.5,12.5,400", "3,700,50"})
  void bothTailsAddUpToOneAndFallWithWhatIsNeeded(double alpha, double beta, int n) {
    BetaBinomial count = new BetaBinomial(alpha, beta);
    double before = 1;
    double expected = 0;
    for (int k = 0; k <= n + 1; k++) {
      double chance = count.atLeast(n, k);
      assertTrue(chance >= 0 && chance <= before + 1e-12, k + ": " + chance);
      before = chance;
      expected += k == 0 ? 0 : chance;
    }
    assertEquals(n * count.share(), expected, 1e-8, "the mean is the sum of the tails");
  }

  @Test
  void aCertainShareIsTheLimitOfALongRecord() {
    BetaBinomial longRecord = BetaBinomial.ofRecord(930_000_000, 1_000_000_000);
    double known = UsableCount.known(0.93).atLeast(30, 27);
    assertEquals(known, longRecord.atLeast(30, 27), 1e-6);
  }

  @Test
  void nothingNeededNeedsNoOrderAndWhatCannotBeReachedSaysSo() {
    assertEquals(OptionalInt.of(0), UsableCount.known(0.5).smallestOrder(0, 0.9, MOST));
    assertTrue(UsableCount.known(0.0).smallestOrder(1, 0.9, MOST).isEmpty());
    assertTrue(new BetaBinomial(0.5, 30.5).smallestOrder(500, 0.99, MOST).isEmpty());
    assertTrue(UsableCount.known(1.0).smallestOrder(MOST + 1, 0.9, MOST).isEmpty());
    assertEquals(OptionalInt.of(7), UsableCount.known(1.0).smallestOrder(7, 0.999, MOST));
    UsableCount half = UsableCount.known(0.5);
    assertThrows(IllegalArgumentException.class, () -> half.smallestOrder(3, 1, MOST));
    assertThrows(IllegalArgumentException.class, () -> BetaBinomial.ofRecord(4, 3));
    assertThrows(IllegalArgumentException.class, () -> new BetaBinomial(0, 1));
    assertThrows(IllegalArgumentException.class, () -> LotShares.next(List.of()));
  }

  @Test
  void manyAlikeLotsSayNearlyWhatTheirSumSays() {
    List<LotShares.Count> lots = new ArrayList<>();
    for (int i = 0; i < 30; i++) {
      lots.add(new LotShares.Count(46 + i % 3, 50));
    }
    BetaBinomial next = LotShares.next(lots);
    assertEquals(0.94, next.share(), 0.005);
    OptionalInt pooled = BetaBinomial.ofRecord(1410, 1500).smallestOrder(24, 0.9, MOST);
    OptionalInt apart = next.smallestOrder(24, 0.9, MOST);
    assertTrue(apart.getAsInt() - pooled.getAsInt() <= 1, apart + " " + pooled);
  }

  /**
   * The sentence "in 9 of 10 orders enough are usable", 4,000 orders a row: shares of lots differ
   * by the standard deviation named, the order comes from the last lots of 30 pieces each.
   */
  @ParameterizedTest(name = "share {0}, sd {1}, {2} lots before")
  @CsvSource({
    "0.93,0,2",
    "0.93,0,8",
    "0.93,0.03,1",
    "0.93,0.03,3",
    "0.93,0.03,8",
    "0.93,0.06,1",
    "0.93,0.06,3",
    "0.93,0.06,8",
    "0.8,0.08,3",
    "0.8,0.08,8"
  })
  void inNineOfTenOrdersEnoughAreUsableThoughLotsDiffer(double share, double sd, int before) {
    UniformRandomProvider random = new SplittableRandom(20260912L + before)::nextLong;
    int needed = 24;
    int orders = 4_000;
    int enough = 0;
    for (int i = 0; i < orders; i++) {
      List<LotShares.Count> lots = new ArrayList<>();
      for (int lot = 0; lot < before; lot++) {
        lots.add(new LotShares.Count(usable(30, lotShare(share, sd, random), random), 30));
      }
      int n = LotShares.next(lots).smallestOrder(needed, 0.9, MOST).orElseThrow();
      enough += usable(n, lotShare(share, sd, random), random) >= needed ? 1 : 0;
    }
    double found = (double) enough / orders;
    assertTrue(found >= 0.88, () -> "enough in " + found);
  }

  private static double lotShare(double mean, double sd, UniformRandomProvider random) {
    if (sd == 0) {
      return mean;
    }
    double pieces = mean * (1 - mean) / (sd * sd) - 1;
    return BetaDistribution.of(mean * pieces, (1 - mean) * pieces).createSampler(random).sample();
  }

  private static int usable(int n, double share, UniformRandomProvider random) {
    return BinomialDistribution.of(n, share).createSampler(random).sample();
  }
}
