package club.emberwell.stats;

import static club.emberwell.laser.Effect.RIGHT;
import static club.emberwell.laser.Effect.TOO_LITTLE;
import static club.emberwell.laser.Effect.TOO_MUCH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.laser.Effect;
import java.util.Arrays;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** The states are this project's own rules; how often the edges hold is in WindowCoverageTest. */
class DoseWindowTest {

  /** Each member tries the three grades round edges of 1 and 2.5, moved a little. */
  private static DoseWindow ladder(int members) {
    int steps = 5;
    int[] who = new int[members * steps];
    double[] doses = new double[who.length];
    Effect[] effects = new Effect[who.length];
    double[] tried = {0.6, 0.95, 1.6, 2.4, 4};
    for (int i = 0; i < who.length; i++) {
      who[i] = i / steps;
      double own = Math.exp(0.1 * Math.sin(3.0 * who[i]));
      doses[i] = tried[i % steps] * Math.exp(0.03 * Math.cos(7.0 * i));
      effects[i] = doses[i] < own ? TOO_LITTLE : doses[i] > 2.5 * own ? TOO_MUCH : RIGHT;
    }
    return DoseWindow.of(who, doses, effects, 0.1);
  }

  private static DoseWindow window(int[] members, double[] doses, Effect... effects) {
    return DoseWindow.of(members, doses, effects, 0);
  }

  @Test
  void nothingAndTwoMembersHaveNoWindow() {
    DoseWindow none = window(new int[0], new double[0]);
    assertEquals(DoseWindow.State.TOO_FEW_MEMBERS, none.state());
    assertTrue(none.observed().isEmpty());
    DoseWindow two = window(new int[] {0, 0, 1}, new double[] {1, 2, 3}, RIGHT, TOO_MUCH, RIGHT);
    assertEquals(DoseWindow.State.TOO_FEW_MEMBERS, two.state());
    assertEquals(DoseLimit.Kind.NOT_KNOWN, two.upper().kind());
    assertTrue(two.at(2).isEmpty());
    assertThrows(
        IllegalArgumentException.class, () -> window(new int[] {0}, new double[] {0}, RIGHT));
  }

  @Test
  void whereAllIsRightNobodyTriedLessOrMore() {
    DoseWindow window = window(new int[] {0, 1, 2}, new double[] {1, 2, 3}, RIGHT, RIGHT, RIGHT);
    assertEquals(DoseWindow.State.ALL_RIGHT, window.state());
    assertEquals(new Interval(1, 3, 1), rounded(window.observed()));
    assertEquals(DoseLimit.Kind.NOT_TRIED, window.lower().kind());
    assertEquals(DoseLimit.Kind.NOT_TRIED, window.upper().kind());
    assertTrue(window.at(2).isEmpty());
  }

  private static Interval rounded(Optional<Interval> i) {
    return new Interval(
        Math.round(i.orElseThrow().low() * 1e9) / 1e9,
        Math.round(i.orElseThrow().high() * 1e9) / 1e9,
        i.orElseThrow().coverage());
  }

  @Test
  void anEdgeIsToldFromEightMembersAndRoughBelow() {
    DoseWindow eight = ladder(8);
    assertEquals(DoseLimit.Kind.TOLD, eight.lower().kind());
    assertEquals(DoseLimit.Kind.TOLD, eight.upper().kind());
    assertEquals(0, Math.log(eight.lower().dose()), 0.25);
    assertEquals(0, Math.log(eight.upper().dose() / 2.5), 0.25);
    assertTrue(eight.lower().range().orElseThrow().contains(eight.lower().dose()));
    assertEquals(DoseWindow.State.KNOWN, eight.state());
    DoseWindow seven = ladder(7);
    assertEquals(DoseLimit.Kind.ROUGH, seven.lower().kind());
    assertTrue(seven.lower().range().isPresent());
    assertTrue(seven.lower().next().isEmpty());
  }

  @Test
  void aWideIntervalIsRoughHoweverManyMembersThereAre() {
    Interval wide = new Interval(1, 3.01, 0.95);
    assertEquals(DoseLimit.Kind.ROUGH, DoseLimit.known(2, wide, 30).kind());
    assertEquals(DoseLimit.Kind.TOLD, DoseLimit.known(2, new Interval(1, 3, 0.95), 8).kind());
  }

  @Test
  void aGradeNobodyReportedWithNothingTriedBeyondIsSaidToBeThat() {
    DoseWindow window =
        window(
            new int[] {0, 0, 1, 1, 2, 2, 3, 3},
            new double[] {1, 2, 1.1, 3, 0.9, 2.5, 1.2, 4},
            TOO_LITTLE,
            RIGHT,
            TOO_LITTLE,
            RIGHT,
            TOO_LITTLE,
            RIGHT,
            TOO_LITTLE,
            RIGHT);
    assertTrue(window.lower().fitted());
    assertEquals(DoseLimit.Kind.NOT_TRIED, window.upper().kind());
    assertEquals(0.5, window.at(window.lower().dose()).orElseThrow().right(), 1e-9);
    assertEquals(0, window.at(3.9).orElseThrow().tooMuch());
    assertTrue(window.at(4.1).isEmpty(), "nothing is said beyond the doses tried");
    assertTrue(window.at(0.1).isPresent());
  }

  @Test
  void membersOfOneTrialEachSayNothingOfAnEdgeButWhereToLook() {
    DoseWindow window =
        window(
            new int[] {0, 1, 2, 3, 4, 5},
            new double[] {1, 1, 1, 4, 4, 4},
            TOO_LITTLE,
            TOO_LITTLE,
            TOO_LITTLE,
            RIGHT,
            RIGHT,
            RIGHT);
    assertEquals(DoseLimit.Kind.NOT_KNOWN, window.lower().kind());
    assertEquals(2, window.lower().next().orElseThrow(), 1e-9);
    assertEquals(DoseWindow.State.NOT_KNOWN, window.state());
    assertTrue(window.at(2).isEmpty());
  }

  @Test
  void twoTrialsOrOneMemberBeyondAnEdgeAreTooFew() {
    int[] who = {0, 0, 0, 1, 1, 1, 2, 2, 2};
    double[] doses = {0.5, 0.6, 2, 1.5, 2, 2.2, 1.6, 2, 2.2};
    DoseWindow one =
        window(who, doses, TOO_LITTLE, TOO_LITTLE, RIGHT, RIGHT, RIGHT, RIGHT, RIGHT, RIGHT, RIGHT);
    assertEquals(DoseLimit.Kind.NOT_KNOWN, one.lower().kind());
    assertTrue(one.lower().next().isPresent());
  }

  @Test
  void resultsThatFallWithTheDoseWithinMembersAreSaidToBeUnordered() {
    DoseWindow window =
        window(
            new int[] {0, 0, 0, 1, 1, 1, 2, 2, 2},
            new double[] {1, 2, 4, 1, 2, 4, 1.1, 2.1, 4.1},
            TOO_MUCH,
            RIGHT,
            TOO_LITTLE,
            TOO_MUCH,
            RIGHT,
            TOO_LITTLE,
            TOO_MUCH,
            RIGHT,
            TOO_LITTLE);
    assertEquals(DoseWindow.State.UNORDERED, window.state());
    assertFalse(window.lower().fitted());
  }

  @Test
  void oneDoseAndNoRightResultTellNoEdge() {
    DoseWindow one = window(new int[] {0, 1, 2}, new double[] {2, 2, 2}, RIGHT, RIGHT, TOO_MUCH);
    assertEquals(DoseLimit.Kind.NOT_KNOWN, one.upper().kind());
    assertEquals(DoseLimit.Kind.NOT_TRIED, one.lower().kind());
    DoseWindow none =
        window(new int[] {0, 1, 2}, new double[] {1, 2, 5}, TOO_LITTLE, TOO_LITTLE, TOO_MUCH);
    assertEquals(DoseWindow.State.NONE_RIGHT, none.state());
    assertFalse(none.lower().fitted());
  }

  @Test
  void chancesSumToOneAndFlattenTheMoreMembersDiffer() {
    DoseWindow window = ladder(12);
    for (double dose = 0.2; dose < 9; dose *= 1.2) {
      DoseWindow.Chances at = window.at(dose).orElseThrow();
      assertEquals(1, at.tooLittle() + at.right() + at.tooMuch(), 1e-9);
    }
    assertTrue(window.at(1.6).orElseThrow().right() > 0.9);
    assertTrue(window.at(0.3).orElseThrow().tooLittle() > 0.9);
    assertTrue(window.at(8).orElseThrow().tooMuch() > 0.9);
  }

  /** The design and the jackknife written out, with the Firth fit that is checked against R. */
  @Test
  void anEdgeIsThatOfTheFitWithinMembersAndItsIntervalThatOfLeavingEachOut() {
    int[] who = {0, 0, 0, 1, 1, 2, 2, 2, 2, 3, 3, 4, 4, 4};
    double[] logs = {-0.5, 0.1, 0.6, 0.2, -0.3, 0, 0.3, -0.2, 0.8, -0.1, 0.5, 0.4, -0.4, 0.1};
    boolean[] reached = new boolean[who.length];
    for (int i = 0; i < who.length; i++) {
      reached[i] = logs[i] > 0.05 + 0.1 * Math.sin(5.0 * i);
    }
    WithinBetween found = WithinBetween.of(new MemberDoses(who, logs), reached).fit().orElseThrow();
    double all = byHand(who, logs, reached, -1);
    assertEquals(all, found.edge(), 1e-6);
    double squares = 0;
    for (int out = 0; out < 5; out++) {
      squares += Math.pow(byHand(who, logs, reached, out) - all, 2);
    }
    double error = Math.sqrt(4.0 / 5 * squares);
    assertEquals(error, found.error().orElseThrow(), 1e-6);
    // R: qt(0.975, 4)
    assertEquals(all + 2.776445105 * error, found.interval().orElseThrow().high(), 1e-6);
  }

  private static double byHand(int[] who, double[] logs, boolean[] reached, int out) {
    double[] means = new double[5];
    for (int member = 0; member < 5; member++) {
      int wanted = member;
      means[member] =
          IntStream.range(0, who.length)
              .filter(i -> who[i] == wanted)
              .mapToDouble(i -> logs[i])
              .average()
              .orElseThrow();
    }
    double mean = 0;
    for (int member = 0; member < 5; member++) {
      mean += member == out ? 0 : means[member] / (out < 0 ? 5 : 4);
    }
    int[] kept = IntStream.range(0, who.length).filter(i -> who[i] != out).toArray();
    double[][] rows = new double[kept.length][];
    double[] successes = new double[kept.length];
    double[] weights = new double[kept.length];
    for (int i = 0; i < kept.length; i++) {
      int member = who[kept[i]];
      long own = Arrays.stream(kept).filter(k -> who[k] == member).count();
      weights[i] = (double) kept.length / (out < 0 ? 5 : 4) / own;
    }
    for (int i = 0; i < kept.length; i++) {
      double own = means[who[kept[i]]];
      rows[i] = new double[] {1, logs[kept[i]] - own, own - mean};
      successes[i] = reached[kept[i]] ? weights[i] : 0;
    }
    double[] beta = FirthLogit.fit(rows, successes, weights).orElseThrow().coefficients();
    return mean - beta[0] / beta[1];
  }
}
