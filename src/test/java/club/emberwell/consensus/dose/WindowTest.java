package club.emberwell.consensus.dose;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.consensus.MadeTrials;
import club.emberwell.consensus.range.ConsensusLimits;
import club.emberwell.consensus.range.Group;
import club.emberwell.consensus.range.Range;
import club.emberwell.laser.Effect;
import club.emberwell.laser.Process;
import club.emberwell.search.query.Measure;
import club.emberwell.stats.DoseLimit;
import club.emberwell.stats.DoseWindow;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** The window of a group. The fits themselves are checked against R in {@code stats}. */
class WindowTest {

  private static Window window(MadeTrials made) {
    Group group = made.group();
    return Window.of(group, Range.of(group, false).dose());
  }

  private static MadeTrials members(int members, double dose, Effect effect, MadeTrials made) {
    for (int member = 1; member <= members; member++) {
      made.by(member).dose(dose).was(effect);
    }
    return made;
  }

  /** A made world: even chances at 0.5 and 2 J/mm2, slopes of 4 on ln dose. */
  @Test
  void aKnownWindowIsFoundAgain() {
    SplittableRandom random = new SplittableRandom(20261125);
    MadeTrials made = new MadeTrials();
    for (int member = 1; member <= 60; member++) {
      for (int trial = 0; trial < 6; trial++) {
        double log = random.nextDouble(Math.log(0.1), Math.log(10));
        double u = random.nextDouble();
        double atLeastRight = 1 / (1 + Math.exp(-4 * (log - Math.log(0.5))));
        double tooMuch = 1 / (1 + Math.exp(-4 * (log - Math.log(2))));
        Effect effect =
            u < tooMuch ? Effect.TOO_MUCH : u < atLeastRight ? Effect.RIGHT : Effect.TOO_LITTLE;
        made.by(member).dose(Math.exp(log)).was(effect);
      }
    }
    Window window = window(made);
    assertEquals(DoseLimit.Kind.TOLD, window.lower().kind());
    assertEquals(DoseLimit.Kind.TOLD, window.upper().kind());
    assertEquals(0.5, window.lower().dose(), 0.08);
    assertEquals(2, window.upper().dose(), 0.3);
    assertEquals(1, window.best().orElseThrow().dose(), 0.15);
    assertEquals(window.best().orElseThrow().chance(), window.chance(1).orElseThrow(), 0.01);
    Window.Counts counts = window.counts();
    int counted = counts.tooLittle() + counts.right() + counts.tooMuch();
    assertEquals(360, counted + counts.aside() + counts.strays());
  }

  @Test
  void theCurveSumsToOneAndIsGreyBeyondTheDosesTried() {
    MadeTrials made = new MadeTrials();
    members(4, 0.5, Effect.TOO_LITTLE, made);
    members(4, 1, Effect.RIGHT, made);
    made.by(1).dose(0.6).was(Effect.RIGHT);
    made.by(2).dose(0.9).was(Effect.TOO_LITTLE);
    members(3, 2, Effect.TOO_MUCH, made);
    made.by(4).dose(2).was(Effect.RIGHT);
    Window window = window(made);
    assertEquals(ConsensusLimits.CURVE_POINTS, window.curve().size());
    for (Window.Point point : window.curve()) {
      assertEquals(1, point.tooLittle() + point.right() + point.tooMuch(), 1e-12);
      assertEquals(point.dose() >= 0.5 && point.dose() <= 2, point.observed());
    }
    assertFalse(window.curve().get(0).observed());
    assertTrue(window.curve().get(30).observed());
  }

  @Test
  void oneTrialWithASlipOfUnitsIsLeftOutAndItsMemberIsNot() {
    MadeTrials made = new MadeTrials();
    for (int member = 1; member <= 9; member++) {
      made.by(member).dose(1 + member / 10.0);
      made.by(member).dose(1 + member / 20.0);
      made.by(member).dose(0.02).was(Effect.TOO_LITTLE);
      made.by(member).dose(30).was(Effect.TOO_MUCH);
    }
    Window before = window(made);
    // mm/min taken for mm/s: 60 times too little, and an inch for a millimetre
    made.by(3).dose(1.3 / 60);
    made.by(4).dose(1.4 / 60).was(Effect.TOO_MUCH);
    made.by(5).dose(1.5 * 25.4).was(Effect.TOO_LITTLE);
    Window after = window(made);
    assertEquals(3, after.counts().strays());
    assertEquals(9, after.counts().members());
    assertEquals(before.lower(), after.lower());
    assertEquals(before.upper(), after.upper());
    assertEquals(3, after.marks().stream().filter(Window.Mark::aside).count());
  }

  @Test
  void trialsWithoutADoseAndOfMembersSetAsideAreLeftOutAndCounted() {
    MadeTrials made = new MadeTrials();
    for (int member = 1; member <= 9; member++) {
      made.by(member).dose(1 + member / 100.0);
      made.by(member).dose(0.3).was(Effect.TOO_LITTLE);
    }
    made.by(10).dose(60);
    made.by(11).with(Measure.SPEED, 100);
    Window window = window(made);
    assertEquals(1, window.counts().aside());
    assertEquals(1, window.counts().undosed());
    assertEquals(9, window.counts().members());
    assertEquals(1.09, window.fit().observed().orElseThrow().high(), 1e-12);
    assertEquals(
        List.of(60.0),
        window.marks().stream().filter(Window.Mark::aside).map(Window.Mark::dose).toList());
  }

  @Test
  void lineWorkHasItsWindowInLineDose() {
    MadeTrials made = new MadeTrials();
    for (int member = 1; member <= 3; member++) {
      made.by(member).of(Process.CUT).dose(4);
      made.by(member).of(Process.CUT).dose(2).was(Effect.TOO_LITTLE);
    }
    Window window = window(made);
    assertEquals(Measure.LINE_DOSE, window.measure());
    assertEquals(DoseWindow.State.KNOWN, window.fit().state());
  }
}
