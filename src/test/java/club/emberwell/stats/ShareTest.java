package club.emberwell.stats;

import static club.emberwell.stats.CheckValues.CLOSED_FORM;
import static club.emberwell.stats.CheckValues.assertClose;
import static club.emberwell.stats.CheckValues.integers;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.aggregator.ArgumentsAccessor;
import org.junit.jupiter.params.provider.CsvFileSource;

class ShareTest {

  @ParameterizedTest(name = "{0} of {1} at {2}")
  @CsvFileSource(resources = "/reference/statistics/binomial_ci.csv", numLinesToSkip = 1)
  void theIntervalOfAShareAgreesWithR(ArgumentsAccessor row) {
    int k = row.getInteger(0);
    int n = row.getInteger(1);
    double level = row.getDouble(2);
    check(row, 3, BinomialInterval.wilsonShare((double) k / n, n, level), "Wilson of a share");
  }

  @Test
  void wilsonAgreesWithThePrintedTableOfNewcombe() {
    // Newcombe 1998, table I, 81 of 263: 0.2553 to 0.3662
    Interval interval = BinomialInterval.wilsonShare(81.0 / 263, 263, 0.95);
    assertEquals(0.2553, interval.low(), 5e-5);
    assertEquals(0.3662, interval.high(), 5e-5);
  }

  @ParameterizedTest(name = "{0}")
  @CsvFileSource(resources = "/reference/statistics/member_share_wilson.csv", numLinesToSkip = 1)
  void theShareOfMembersAgreesWithR(ArgumentsAccessor row) {
    MemberShare share =
        MemberShare.of(integers(row.getString(1)), integers(row.getString(2))).orElseThrow();
    assertClose(row.getDouble(4), share.share(), CLOSED_FORM, "share");
    assertEquals(row.getInteger(5), share.members());
    check(row, 7, share.interval(), "Wilson of members");
  }

  @Test
  void nobodyHasNoShareAndOneTrialTellsLittle() {
    assertTrue(MemberShare.of(new int[0], new int[0]).isEmpty());
    assertTrue(MemberShare.of(new int[] {0}, new int[] {0}).isEmpty());
    MemberShare one = MemberShare.of(new int[] {1, 0}, new int[] {1, 0}).orElseThrow();
    assertEquals(1, one.members());
    assertTrue(one.interval().low() < 0.21);
    assertThrows(
        IllegalArgumentException.class, () -> MemberShare.of(new int[] {2}, new int[] {1}));
    assertThrows(IllegalArgumentException.class, () -> BinomialInterval.wilsonShare(0, 0, 0.95));
    assertThrows(
        IllegalArgumentException.class, () -> BinomialInterval.wilsonShare(Double.NaN, 3, 0.95));
  }

  private static void check(ArgumentsAccessor row, int column, Interval found, String what) {
    assertClose(row.getDouble(column), found.low(), CLOSED_FORM, what + " low");
    assertClose(row.getDouble(column + 1), found.high(), CLOSED_FORM, what + " high");
  }
}
