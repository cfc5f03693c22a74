package club.emberwell.stats;

import static club.emberwell.stats.CheckValues.CLOSED_FORM;
import static club.emberwell.stats.CheckValues.assertClose;
import static club.emberwell.stats.CheckValues.number;
import static club.emberwell.stats.CheckValues.vector;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
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
    assertTrue(NextMemberInterval.band(new double[] {1, 2}).isEmpty());
    Interval five = NextMemberInterval.band(new double[] {5, 3, 1, 4, 2}).orElseThrow();
    assertEquals(1, five.low());
    assertEquals(5, five.high());
    assertEquals(2.0 / 3, five.coverage(), 1e-15);
    double[] nine = IntStream.rangeClosed(1, 9).asDoubleStream().toArray();
    assertEquals(new Interval(1, 9, 0.8), NextMemberInterval.band(nine).orElseThrow());
    double[] fourteen = IntStream.rangeClosed(1, 14).asDoubleStream().toArray();
    // type 6: position (14 + 1) x 0.1 = 1.5
    Interval band = NextMemberInterval.band(fourteen).orElseThrow();
    assertEquals(1.5, band.low(), 1e-12);
    assertEquals(13.5, band.high(), 1e-12);
    assertEquals(0.8, band.coverage());
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
