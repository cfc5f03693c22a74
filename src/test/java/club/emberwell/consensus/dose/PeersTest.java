package club.emberwell.consensus.dose;

import static org.junit.jupiter.api.Assertions.assertEquals;

import club.emberwell.consensus.MadeTrials;
import club.emberwell.consensus.range.ConsensusLimits;
import club.emberwell.consensus.range.Group;
import club.emberwell.consensus.range.Range;
import club.emberwell.laser.Effect;
import club.emberwell.search.query.Measure;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Which trials of peers are left out of a window. */
class PeersTest {
  private static Window window(MadeTrials made) {
    Group group = made.group();
    return Window.of(group, Range.of(group, false).dose());
  }

  private static MadeTrials eight() {
    return MadeTrials.ofVoices(1, 1.1, 1.2, 1.3, 1.4, 1.5, 1.6, 1.7);
  }

  /** Beyond tenfold a right trial, or too much far below, is a slip; a test at the end is none. */
  @Test
  void onlyWhatCannotBeATestAtTheEndIsLeftOut() {
    MadeTrials made = eight();
    made.by(1).dose(0.01).was(Effect.TOO_LITTLE);
    made.by(2).dose(200).was(Effect.TOO_MUCH);
    assertEquals(0, window(made).counts().strays());
    made.by(3).dose(0.01).was(Effect.TOO_MUCH);
    made.by(4).dose(200).was(Effect.TOO_LITTLE);
    Window window = window(made);
    assertEquals(2, window.counts().strays());
    assertEquals(
        List.of(
            new Window.Mark(0.01, Effect.TOO_MUCH, 11, true),
            new Window.Mark(200, Effect.TOO_LITTLE, 12, true)),
        window.marks().stream().filter(Window.Mark::aside).toList());
  }

  @Test
  void aTrialWithoutDoseIsCountedApart() {
    MadeTrials made = eight();
    made.by(1).dose(0).was(Effect.TOO_LITTLE);
    made.by(2).with(Measure.SPEED, 10);
    assertEquals(2, window(made).counts().undosed());
    assertEquals(8, window(made).counts().right());
    assertEquals(8, window(made).counts().members());
  }

  // 400 marks at most: 399 trials show all, 400 every second
  @Test
  void manyTrialsAreDrawnAtEqualSteps() {
    double[] doses = IntStream.range(0, 399).mapToDouble(i -> 1 + i / 1000.0).toArray();
    assertEquals(399, window(MadeTrials.ofVoices(doses)).marks().size());
    double[] more = IntStream.range(0, 400).mapToDouble(i -> 1 + i / 1000.0).toArray();
    assertEquals(200, window(MadeTrials.ofVoices(more)).marks().size());
  }

  /** The curve runs from the least dose tried over 1.5 to the greatest times 1.5. */
  @Test
  void theCurveGoesHalfAsFarAgainAsTheDosesTried() {
    MadeTrials made = new MadeTrials();
    for (int member = 1; member <= 4; member++) {
      made.by(member).dose(0.5).was(Effect.TOO_LITTLE);
      made.by(member).dose(member == 1 ? 0.5 : 1);
      made.by(member).dose(2).was(member == 1 ? Effect.RIGHT : Effect.TOO_MUCH);
    }
    List<Window.Point> curve = window(made).curve();
    assertEquals(0.5 / 1.5, curve.get(0).dose(), 1e-12);
    assertEquals(2 * 1.5, curve.get(ConsensusLimits.CURVE_POINTS - 1).dose(), 1e-12);
    assertEquals(List.of(), window(MadeTrials.ofVoices(1, 2, 3)).curve());
  }
}
