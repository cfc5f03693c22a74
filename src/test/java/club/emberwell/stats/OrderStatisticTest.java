package club.emberwell.stats;

import static club.emberwell.stats.CheckValues.CLOSED_FORM;
import static club.emberwell.stats.CheckValues.assertClose;
import static club.emberwell.stats.CheckValues.number;
import static club.emberwell.stats.CheckValues.vector;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Comparator;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.aggregator.ArgumentsAccessor;
import org.junit.jupiter.params.provider.CsvFileSource;

class OrderStatisticTest {

  @ParameterizedTest(name = "{0}")
  @CsvFileSource(resources = "/reference/statistics/median_ci.csv", numLinesToSkip = 1)
  void theIntervalOfTheMedianAgreesWithR(ArgumentsAccessor row) {
    double[] values = vector(row.getString(2));
    assertClose(row.getDouble(4), Quantiles.median(values), CLOSED_FORM, "median");
    Optional<Interval> interval = MedianInterval.of(values, row.getDouble(3));
    assertEquals(!Double.isNaN(number(row.getString(5))), interval.isPresent());
    interval.ifPresent(
        found -> {
          assertEquals(row.getDouble(5), found.low());
          assertEquals(row.getDouble(6), found.high());
          assertClose(row.getDouble(7), found.coverage(), CLOSED_FORM, "coverage");
        });
  }

  @ParameterizedTest(name = "{0} at {1}")
  @CsvFileSource(resources = "/reference/statistics/median_ci_ranks.csv", numLinesToSkip = 1)
  void medianRanksAndTheirCoverageAgreeWithR(ArgumentsAccessor row) {
    assertRanks(row, MedianInterval.ranks(row.getInteger(0), row.getDouble(1)));
  }

  @ParameterizedTest(name = "{0} at {1}")
  @CsvFileSource(
      resources = "/reference/statistics/next_member_interval_ranks.csv",
      numLinesToSkip = 1)
  void nextMemberRanksAndTheirCoverageAgreeWithR(ArgumentsAccessor row) {
    int n = row.getInteger(0);
    assertRanks(row, NextMemberInterval.ranks(n, row.getDouble(1)));
    assertClose(row.getDouble(5), NextMemberInterval.spanCoverage(n), CLOSED_FORM, "span");
  }

  @Test
  void anIntervalOfTheMedianExistsFromSixVoices() {
    assertTrue(MedianInterval.of(new double[0]).isEmpty());
    assertTrue(MedianInterval.of(new double[] {1, 2, 3, 4, 5}).isEmpty());
    Interval six = MedianInterval.of(new double[] {6, 1, 5, 2, 4, 3}).orElseThrow();
    // 1 - 2/64, the 96.9 % of the facts
    assertEquals(new Interval(1, 6, 0.96875), six);
  }

  @Test
  void aBandPrintsItsOwnCoverageUntilNineVoicesReachEightyPercent() {
    assertTrue(NextMemberInterval.band(new int[] {1, 1}, new double[] {1, 2}).isEmpty());
    Interval five = band(5, 3, 1, 4, 2);
    assertEquals(1, five.low());
    assertEquals(5, five.high());
    assertEquals(2.0 / 3, five.coverage(), 1e-15);
    double[] nine = IntStream.rangeClosed(1, 9).asDoubleStream().toArray();
    assertEquals(new Interval(1, 9, 0.8), band(nine));
    double[] fourteen = IntStream.rangeClosed(1, 14).asDoubleStream().toArray();
    // type 6: position (14 + 1) x 0.1 = 1.5
    Interval band = band(fourteen);
    assertEquals(1.5, band.low(), 1e-12);
    assertEquals(13.5, band.high(), 1e-12);
    assertEquals(0.8, band.coverage());
  }

  private static Interval band(double... values) {
    int[] single = new int[values.length];
    Arrays.fill(single, 1);
    return NextMemberInterval.band(single, values).orElseThrow();
  }

  /** By hand: nine members, the first with two trials of half the weight. */
  @Test
  void aTrialStandsAtTheWeightBeforeItPlusHalfItsOwnPlusAHalfOfOneMoreThanTheMembers() {
    int[] trials = {2, 1, 1, 1, 1, 1, 1, 1, 1};
    double[] values = {1, 1.5, 2, 3, 4, 5, 6, 7, 8, 9};
    Interval band = NextMemberInterval.band(trials, values).orElseThrow();
    // 1 stands at 0.075, 1.5 at 0.125, 8 at 0.8 and 9 at 0.9
    assertEquals(1.25, band.low(), 1e-12);
    assertEquals(9, band.high(), 1e-12);
    assertEquals(0.8, band.coverage());
  }

  @Test
  void belowNineMembersTheSpanIsThatOfAllTheirTrials() {
    Interval band =
        NextMemberInterval.band(new int[] {1, 3, 1}, new double[] {2, 7, 1, 3, 4}).orElseThrow();
    assertEquals(new Interval(1, 7, 0.5), band);
  }

  /** Above 2,000 trials only those about a quantile are sorted; the answer is the same. */
  @Test
  void manyTrialsGiveWhatSortingAllWouldGive() {
    SplittableRandom random = new SplittableRandom(7);
    int[] trials = new int[700];
    for (int i = 0; i < trials.length; i++) {
      trials[i] = 1 + random.nextInt(9);
    }
    double[] values = new double[Arrays.stream(trials).sum()];
    Arrays.setAll(values, i -> random.nextGaussian());
    double[] weights = new double[values.length];
    int from = 0;
    for (int own : trials) {
      Arrays.fill(weights, from, from + own, 1.0 / own);
      from += own;
    }
    double[] found = WeightedTrials.of(trials, values, values.length).quantiles(0.1, 0.9);
    Integer[] order = IntStream.range(0, values.length).boxed().toArray(Integer[]::new);
    Arrays.sort(order, Comparator.comparingDouble(i -> values[i]));
    for (double p : new double[] {0.1, 0.9}) {
      double before = 0;
      double last = 0;
      double lastAt = 0;
      double expected = Double.NaN;
      for (int i : order) {
        double at = (before + weights[i] / 2 + 0.5) / (trials.length + 1);
        if (at >= p && Double.isNaN(expected)) {
          expected = last + (p - lastAt) / (at - lastAt) * (values[i] - last);
        }
        before += weights[i];
        last = values[i];
        lastAt = at;
      }
      assertEquals(expected, found[p < 0.5 ? 0 : 1], 1e-9);
    }
  }

  private static void assertRanks(ArgumentsAccessor row, Optional<Ranks> ranks) {
    assertEquals(!Double.isNaN(number(row.getString(2))), ranks.isPresent());
    ranks.ifPresent(
        found -> {
          assertEquals(row.getInteger(2), found.low());
          assertEquals(row.getInteger(3), found.high());
          assertClose(row.getDouble(4), found.coverage(), CLOSED_FORM, "coverage");
        });
  }
}
