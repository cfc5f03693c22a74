package club.emberwell.consensus;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.consensus.range.Group;
import club.emberwell.consensus.range.Range;
import club.emberwell.consensus.range.RangeKey;
import club.emberwell.consensus.range.Spread;
import club.emberwell.consensus.range.Success;
import club.emberwell.laser.Effect;
import club.emberwell.laser.Process;
import club.emberwell.laser.Regime;
import club.emberwell.laser.WavelengthBand;
import club.emberwell.search.query.Measure;
import club.emberwell.stats.Evidence;
import club.emberwell.stats.Interval;
import club.emberwell.stats.MemberShare;
import club.emberwell.stats.Quantiles;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** From columns to a range. Check values: R 4.2.2 as the header of each file says. */
class RangeTest {
  private static final double CLOSE = 1e-12;

  private static void assertClose(double expected, double actual, String what) {
    assertEquals(expected, actual, CLOSE * Math.max(1, Math.abs(expected)), what);
  }

  @Test
  void quantilesAreThoseOfMembersMedians() {
    for (Map<String, String> row : CheckFile.statistics("member_weighted_quantile.csv")) {
      double[] members = CheckFile.vector(row.get("member"));
      double[] x = CheckFile.vector(row.get("x"));
      MadeTrials made = new MadeTrials();
      for (int i = 0; i < x.length; i++) {
        made.by((long) members[i]).dose(x[i]);
      }
      Spread dose = made.range().dose();
      String what = row.get("case") + " " + row.get("p");
      double[] voices = join(dose.voices().values(), dose.aside().values());
      double[] medians = CheckFile.vector(row.get("member_medians"));
      Arrays.sort(voices);
      Arrays.sort(medians);
      assertArrayEquals(medians, voices, CLOSE * 100, what);
      if (dose.aside().size() == 0 && dose.quantiles().isPresent()) {
        Quantiles.Seven q = dose.quantiles().get();
        Map<String, Double> at =
            Map.of(
                "0.1",
                q.p10(),
                "0.25",
                q.p25(),
                "0.5",
                q.median(),
                "0.75",
                q.p75(),
                "0.9",
                q.p90());
        assertClose(CheckFile.number(row.get("member_median_hf8")), at.get(row.get("p")), what);
      }
    }
  }

  private static double[] join(double[] a, double[] b) {
    double[] both = Arrays.copyOf(a, a.length + b.length);
    System.arraycopy(b, 0, both, a.length, b.length);
    return both;
  }

  @Test
  void theMiddleHasItsIntervalFromSixVoicesOn() {
    int checked = 0;
    for (Map<String, String> row : CheckFile.statistics("median_ci.csv")) {
      double[] x = CheckFile.vector(row.get("x"));
      boolean usual = row.get("level").equals("0.95") && Arrays.stream(x).allMatch(v -> v > 0);
      Spread dose = usual ? MadeTrials.ofVoices(x).range().dose() : null;
      if (dose == null || dose.aside().size() > 0) {
        continue;
      }
      double lower = CheckFile.number(row.get("lower"));
      assertEquals(!Double.isNaN(lower), dose.medianInterval().isPresent(), row.get("case"));
      if (dose.medianInterval().isPresent()) {
        Interval interval = dose.medianInterval().get();
        assertClose(lower, interval.low(), row.get("case"));
        assertClose(CheckFile.number(row.get("upper")), interval.high(), row.get("case"));
        assertClose(CheckFile.number(row.get("coverage")), interval.coverage(), row.get("case"));
        checked++;
      }
    }
    assertTrue(checked >= 2, "checked " + checked);
  }

  @Test
  void theNextMemberLandsInABandWithTheProbabilityPrinted() {
    int checked = 0;
    for (Map<String, String> row : CheckFile.statistics("next_member_interval_ranks.csv")) {
      int n = Integer.parseInt(row.get("n"));
      if (!row.get("level").equals("0.8") || n < 3 || n > 200) {
        continue;
      }
      double[] doses = new double[n];
      Arrays.setAll(doses, i -> 10 + i);
      Interval band = MadeTrials.ofVoices(doses).range().dose().nextMember().orElseThrow();
      if (row.get("rank_low").isEmpty()) {
        assertClose(CheckFile.number(row.get("span_coverage")), band.coverage(), "n " + n);
        assertEquals(10, band.low());
      } else if (CheckFile.number(row.get("coverage")) == 0.8) {
        // where 80 % falls on ranks the interpolated band is that of the ranks
        assertClose(9 + CheckFile.number(row.get("rank_low")), band.low(), "n " + n);
        assertClose(9 + CheckFile.number(row.get("rank_high")), band.high(), "n " + n);
      }
      checked++;
    }
    assertTrue(checked >= 5, "checked " + checked);
  }

  @Test
  void successIsTheMeanOfMembersOwnShares() {
    for (Map<String, String> row : CheckFile.statistics("member_share_wilson.csv")) {
      double[] good = CheckFile.vector(row.get("good_per_member"));
      double[] all = CheckFile.vector(row.get("reports_per_member"));
      MadeTrials made = new MadeTrials();
      for (int member = 0; member < all.length; member++) {
        for (int i = 0; i < all[member]; i++) {
          made.by(member).dose(1).was(i < good[member] ? Effect.RIGHT : Effect.TOO_MUCH);
        }
      }
      Success success = made.range().success().orElseThrow();
      MemberShare share = success.share().orElseThrow();
      assertClose(CheckFile.number(row.get("member_share")), share.share(), row.get("case"));
      assertClose(CheckFile.number(row.get("wilson_lower")), share.interval().low(), "lower");
      assertClose(CheckFile.number(row.get("wilson_upper")), share.interval().high(), "upper");
      assertEquals((int) Arrays.stream(good).sum(), success.right());
    }
  }

  @Test
  void voicesBeyondTheCutAreNamedAndCountedApart() {
    int checked = 0;
    for (Map<String, String> row : CheckFile.statistics("mad_modified_z.csv")) {
      double[] x = CheckFile.vector(row.get("x"));
      if (!row.get("scale").equals("log")
          || x.length < 8
          || !Arrays.stream(x).allMatch(v -> v > 0)) {
        continue;
      }
      double[] flags = CheckFile.vector(row.get("outlier_3_5"));
      Spread dose = MadeTrials.ofVoices(x).range().dose();
      int flagged = (int) Arrays.stream(flags).sum();
      assertEquals(flagged, dose.aside().size(), row.get("case"));
      assertEquals(x.length - flagged, dose.voices().size(), row.get("case"));
      for (int i = 0; i < x.length; i++) {
        long member = i + 1L;
        boolean aside = Arrays.stream(dose.aside().members()).anyMatch(m -> m == member);
        assertEquals(flags[i] == 1, aside, row.get("case") + " " + i);
      }
      checked++;
    }
    assertTrue(checked >= 1);
  }

  @Test
  void noTwoKeysAreEverMixed() {
    MadeTrials made = new MadeTrials();
    int keys = 0;
    for (Process process : Process.values()) {
      for (WavelengthBand band : WavelengthBand.values()) {
        for (Regime regime : Regime.values()) {
          keys++;
          for (int member = 1; member <= 3; member++) {
            made.by(member).of(process).at(band).in(regime).dose(keys);
          }
        }
      }
    }
    List<Range> ranges = ConsensusService.ranges(made.columns(), false);
    assertEquals(keys, ranges.size());
    Set<RangeKey> seen = new HashSet<>();
    Set<Double> doses = new HashSet<>();
    for (Range range : ranges) {
      assertTrue(seen.add(range.key()));
      assertEquals(3, range.counts().trials());
      Quantiles.Seven q = range.dose().quantiles().orElseThrow();
      assertEquals(q.min(), q.max(), range.key().words());
      assertTrue(doses.add(q.median()));
    }
  }

  @Test
  void theLargestGroupComesFirst() {
    MadeTrials made = MadeTrials.ofVoices(1, 2, 3);
    made.by(1).in(Regime.NS).dose(9);
    List<Range> ranges = ConsensusService.ranges(made.columns(), false);
    assertEquals(Regime.CW, ranges.get(0).key().regime());
    assertEquals(3, ranges.get(0).counts().voices());
    assertEquals(Evidence.ONE_VOICE, ranges.get(1).evidence());
  }

  @Test
  void belowThreeVoicesThereAreOnlyDots() {
    Range range = MadeTrials.ofVoices(1, 2).range();
    assertTrue(range.dose().quantiles().isEmpty());
    assertTrue(range.dose().nextMember().isEmpty());
    assertArrayEquals(new double[] {1, 2}, range.dose().voices().values());
    assertEquals(Evidence.TWO_VOICES, range.evidence());
  }

  @Test
  void aSettingNobodyStatedIsNotShownAndOneThatSomeStatedCountsThose() {
    MadeTrials made = new MadeTrials();
    made.by(1).dose(1).with(Measure.SPEED, 100);
    made.by(2).dose(1);
    made.by(3).dose(1).with(Measure.SPEED, 300).was(Effect.TOO_LITTLE);
    Range range = made.range();
    assertFalse(range.setting(Measure.LINE_SPACING).isPresent());
    assertEquals(1, range.setting(Measure.SPEED).orElseThrow().n());
    assertEquals(2, range.counts().voices());
  }

  @Test
  void aMembersOwnRepeatIsOneMoreTrialAndNotOneMoreVoice() {
    MadeTrials made = MadeTrials.ofVoices(1, 2, 3);
    made.by(1).dose(1.2);
    Range range = made.range();
    assertEquals(4, range.counts().trials());
    assertEquals(3, range.counts().voices());
    assertEquals(1.1, range.dose().voices().values()[0], CLOSE);
  }

  @Test
  void aShareIsLeftOutWhereTheSearchItselfAskedForAnEffect() {
    Group group = MadeTrials.ofVoices(1, 2, 3).group();
    assertTrue(Range.of(group, true).success().isEmpty());
    assertEquals(1, Range.of(group).success().orElseThrow().share().orElseThrow().share());
  }

  /** Many cells of a grid are made to fail. */
  @Test
  void cellsOfTestGridsAreCountedApartFromSingleTrials() {
    MadeTrials made = MadeTrials.ofVoices(1, 2, 3);
    made.by(1).dose(9).was(Effect.TOO_MUCH);
    for (int cell = 0; cell < 9; cell++) {
      made.by(2).in(77).dose(cell + 1).was(cell < 7 ? Effect.TOO_LITTLE : Effect.RIGHT);
    }
    Success success = made.range().success().orElseThrow();
    assertEquals(4, success.trials());
    assertEquals(3, success.right());
    assertEquals(new Success.Cells(2, 9), success.cells());
    // the grid takes nothing from member 2's share: (1/2 + 1 + 1) / 3
    assertClose(2.5 / 3, success.share().orElseThrow().share(), "share");
  }

  /** However many cells are right, they move a range as one single test of the member would. */
  @Test
  void aGridWeighsAsOneMember() {
    MadeTrials grid = MadeTrials.ofVoices(1, 2, 3, 4, 5, 6, 7, 8, 9);
    MadeTrials single = MadeTrials.ofVoices(1, 2, 3, 4, 5, 6, 7, 8, 9);
    for (int cell = 0; cell < 24; cell++) {
      // twelve below 5.5 and twelve above
      grid.by(10).in(77).dose(5.5 + (cell % 2 == 0 ? 1 : -1) * (1 + cell / 2) / 8.0);
    }
    single.by(10).dose(5.5);
    Range many = grid.range();
    Range one = single.range();
    assertArrayEquals(one.dose().voices().values(), many.dose().voices().values(), CLOSE * 10);
    assertEquals(one.dose().quantiles(), many.dose().quantiles());
    assertEquals(one.dose().medianInterval(), many.dose().medianInterval());
    Interval next = many.dose().nextMember().orElseThrow();
    assertClose(one.dose().nextMember().orElseThrow().low(), next.low(), "next member, low");
    assertClose(one.dose().nextMember().orElseThrow().high(), next.high(), "next member, high");
    assertEquals(10, many.dose().voices().size());
    Success success = many.success().orElseThrow();
    assertEquals(9, success.trials());
    assertEquals(new Success.Cells(24, 24), success.cells());
  }
}
