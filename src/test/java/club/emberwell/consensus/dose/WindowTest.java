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
import club.emberwell.stats.DoseWindow;
import club.emberwell.stats.WindowEdges;
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
    WindowEdges edges = window.edges().orElseThrow();
    assertEquals(0.5, edges.low().from(), 0.08);
    assertEquals(2, edges.high().to(), 0.3);
    assertEquals(1, edges.peak(), 0.15);
    assertTrue(window.missing().isEmpty(), window.missing().toString());
    Window.Counts counts = window.counts();
    assertEquals(360, counts.tooLittle() + counts.right() + counts.tooMuch() + counts.aside());
    assertTrue(window.crossCheck().isPresent());
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
  void wordsSayWhatIsMissing() {
    assertMissing("3 members; there are 2", members(2, 1, Effect.RIGHT, new MadeTrials()));
    assertMissing("All right so far: limits unknown", MadeTrials.ofVoices(1, 2, 3));
    MadeTrials oneDose = members(3, 1, Effect.RIGHT, new MadeTrials());
    oneDose.by(1).dose(1).was(Effect.TOO_MUCH);
    assertMissing("one dose", oneDose);
    MadeTrials upper = members(3, 1, Effect.RIGHT, new MadeTrials());
    members(3, 2, Effect.TOO_MUCH, upper);
    assertMissing("Nobody reported too little: the lower limit is unknown", upper);
    assertMissing("the upper limit lies somewhere in the gap", upper);
    MadeTrials none = members(3, 1, Effect.TOO_LITTLE, new MadeTrials());
    members(3, 2, Effect.TOO_MUCH, none);
    assertMissing("Nothing came out right", none);
    MadeTrials reversed = members(5, 1, Effect.TOO_MUCH, new MadeTrials());
    members(5, 2, Effect.TOO_LITTLE, reversed);
    members(5, 1.5, Effect.RIGHT, reversed);
    assertMissing("something else decides here", reversed);
  }

  private static void assertMissing(String words, MadeTrials made) {
    Window window = window(made);
    assertTrue(
        window.missing().stream().anyMatch(sentence -> sentence.contains(words)),
        window.missing() + " lacks: " + words);
  }

  @Test
  void aGapIsGivenAsAGapAndNotAsAPoint() {
    MadeTrials made = members(4, 1, Effect.RIGHT, new MadeTrials());
    members(4, 3, Effect.TOO_MUCH, made);
    WindowEdges edges = window(made).edges().orElseThrow();
    assertEquals(WindowEdges.Kind.GAP, edges.high().kind());
    assertEquals(1, edges.high().from());
    assertEquals(3, edges.high().to());
    assertEquals(WindowEdges.Kind.OPEN, edges.low().kind());
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
    assertEquals(before.edges(), after.edges());
    assertEquals(3, after.marks().stream().filter(Window.Mark::stray).count());
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
    assertEquals(1.09, window.fit().observed().high(), 1e-12);
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
