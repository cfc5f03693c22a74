package club.emberwell.consensus.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.consensus.MadeTrials;
import club.emberwell.consensus.dose.Window;
import club.emberwell.consensus.range.Group;
import club.emberwell.consensus.range.Range;
import club.emberwell.laser.Effect;
import club.emberwell.laser.Emission;
import club.emberwell.laser.Laser;
import club.emberwell.laser.LaserSource;
import club.emberwell.laser.Motion;
import club.emberwell.laser.Process;
import club.emberwell.laser.Regime;
import club.emberwell.laser.WavelengthBand;
import club.emberwell.search.query.Measure;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What to begin with, whole settings of others, and what to try next. */
class AnswerTest {
  private static final double ROUNDING = 0.03;

  private static Laser diode(double ratedW, Double beamUm, Double top) {
    return new Laser(
        LaserSource.DIODE, 450, ratedW, Motion.GANTRY, Emission.of(Regime.CW), null, beamUm, top);
  }

  private static MadeTrials.Trial peer(
      MadeTrials made, long member, double ratedW, double percent, double speed) {
    double watts = ratedW * percent / 100;
    return made.by(member)
        .at(WavelengthBand.BLUE)
        .with(Measure.RATED_POWER, ratedW)
        .with(Measure.BEAM_DIAMETER, 100)
        .with(Measure.POWER_PERCENT, percent)
        .with(Measure.POWER_W, watts)
        .with(Measure.SPEED, speed)
        .with(Measure.LINE_SPACING, 0.1)
        .with(Measure.PASSES, 1)
        .dose(watts / (speed * 0.1));
  }

  private static Answer answer(MadeTrials made, Reader reader) {
    Group group = made.group();
    Range range = Range.of(group, false);
    Optional<Double> middle = range.dose().quantiles().map(q -> q.median());
    return Answer.of(
        group,
        range,
        Target.of(range, middle),
        Optional.of(Window.of(group, range.dose())),
        reader);
  }

  private static Answer answer(MadeTrials made, Laser mine) {
    return answer(made, new Reader(0, 0, mine));
  }

  /** Members at 10 W, 60 % and 18 to 32 mm/s: 3.3 to 1.9 J/mm2. */
  private static MadeTrials eight() {
    MadeTrials made = new MadeTrials();
    for (int member = 1; member <= 8; member++) {
      peer(made, member, 10, 60, 16 + 2 * member);
    }
    return made;
  }

  private static double middle(MadeTrials made) {
    return made.range().dose().quantiles().orElseThrow().median();
  }

  @Test
  void theStartIsAWholeAtTheMiddleDose() {
    Start start = answer(eight(), diode(10, 100.0, 200.0)).start().orElseThrow();
    assertEquals(60, start.settings().powerPercent());
    assertEquals(0.1, start.settings().lineSpacingMm());
    assertEquals(1, start.settings().passes());
    assertEquals(middle(eight()), start.dose(), middle(eight()) * ROUNDING);
    assertEquals(start.dose(), 6 / (start.settings().speedMmS() * 0.1), 1e-9);
    assertEquals(Start.Basis.MIDDLE, start.basis());
    assertFalse(start.rough(), start.why().toString());
    assertFalse(start.lowered());
  }

  @Test
  void noStartGoesBeyondWhatTheMachineCanDo() {
    Random random = new Random(8);
    for (int i = 0; i < 500; i++) {
      double top = Math.exp(random.nextDouble() * 5 + 1);
      double rated = 5 + 35 * random.nextDouble();
      answer(eight(), diode(rated, 100.0, top))
          .start()
          .ifPresent(
              start -> {
                assertTrue(start.settings().speedMmS() <= top, start.toString());
                assertTrue(start.settings().powerPercent() <= 100, start.toString());
                double aim =
                    start.basis() == Start.Basis.MIDDLE ? middle(eight()) : start.from().dose();
                assertEquals(aim, start.dose(), aim * ROUNDING);
              });
    }
  }

  @Test
  void whereTheMachineRunsNoFasterThePowerIsLowered() {
    Start start = answer(eight(), diode(10, 100.0, 15.0)).start().orElseThrow();
    assertTrue(start.lowered());
    assertTrue(start.settings().speedMmS() <= 15);
    assertTrue(start.settings().powerPercent() < 60);
    assertEquals(middle(eight()), start.dose(), middle(eight()) * ROUNDING);
  }

  @Test
  void theMachineMostAlikeLendsItsSettingsThenTheDoseThenTheQuality() {
    MadeTrials made = eight();
    peer(made, 9, 20, 30, 25).with(Measure.QUALITY, 5);
    peer(made, 10, 10, 100, 42).with(Measure.QUALITY, 4);
    Answer found = answer(made, diode(10, 100.0, null));
    assertEquals(10, found.wholes().get(0).made().member());
    assertEquals(100, found.start().orElseThrow().settings().powerPercent());
    Answer strong = answer(made, diode(20, 100.0, null));
    assertEquals(9, strong.wholes().get(0).made().member());
  }

  @Test
  void wholeSettingsAreOfDifferentOtherMembersAndRight() {
    MadeTrials made = eight();
    for (int i = 0; i < 5; i++) {
      peer(made, 3, 10, 60, 24).with(Measure.QUALITY, 5);
    }
    peer(made, 4, 10, 60, 24).was(Effect.TOO_MUCH);
    Answer found = answer(made, new Reader(5, 0, diode(10, 100.0, null)));
    List<Long> members = found.wholes().stream().map(w -> w.made().member()).toList();
    assertEquals(Answer.WHOLES, members.size());
    assertEquals(Answer.WHOLES, members.stream().distinct().count());
    assertFalse(members.contains(5L));
    assertTrue(found.wholes().stream().allMatch(w -> w.effect() == Effect.RIGHT));
  }

  @ParameterizedTest
  @EnumSource(WavelengthBand.class)
  void nothingIsCarriedAcrossBands(WavelengthBand theirs) {
    MadeTrials made = new MadeTrials();
    for (int member = 1; member <= 6; member++) {
      peer(made, member, 10, 60, 16 + 2 * member).at(theirs);
    }
    Answer found = answer(made, diode(10, 100.0, null));
    assertEquals(theirs == WavelengthBand.BLUE, found.start().isPresent());
    assertEquals(theirs != WavelengthBand.BLUE, !found.refusal().isEmpty());
    assertEquals(Answer.WHOLES, found.wholes().size());
  }

  @Test
  void aMissingSpotMakesAStartRoughAndSaysSo() {
    Start start = answer(eight(), diode(10, null, null)).start().orElseThrow();
    assertEquals(List.of(Why.MY_SPOT), start.why());
    assertTrue(answer(eight(), diode(10, 300.0, null)).start().isEmpty());
  }

  @Test
  void oneMembersTrialIsTheStartWhereThereIsNoMiddle() {
    MadeTrials made = new MadeTrials();
    peer(made, 1, 10, 60, 20);
    Start start = answer(made, diode(10, 100.0, null)).start().orElseThrow();
    assertEquals(Start.Basis.ONE_TRIAL, start.basis());
    assertEquals(List.of(Why.ONE_MEMBER), start.why());
    assertEquals(3, start.dose(), 3 * ROUNDING);
  }

  @Test
  void amongMachinesUnlikeMineTheOneLikeItIsFollowed() {
    MadeTrials made = eight();
    peer(made, 9, 10, 60, 40).with(Measure.BEAM_DIAMETER, 300);
    Start start = answer(made, diode(10, 300.0, null)).start().orElseThrow();
    assertEquals(9, start.from().made().member());
    assertEquals(List.of(Why.UNLIKE_MOST), start.why());
    assertEquals(1.5, start.dose(), 1.5 * ROUNDING);
  }

  @Test
  void aStrangerSeesWholesAndNoStart() {
    Answer found = answer(eight(), Reader.STRANGER);
    assertTrue(found.start().isEmpty() && found.next().isEmpty() && found.refusal().isEmpty());
    assertEquals(Answer.WHOLES, found.wholes().size());
  }

  private static Next next(MadeTrials made) {
    return answer(made, new Reader(1, 77, diode(10, 100.0, null))).next().orElseThrow();
  }

  private static MadeTrials.Trial mine(MadeTrials made, double dose) {
    return peer(made, 1, 10, 60, 6 / (dose * 0.1)).on(77);
  }

  @Test
  void betweenTooLittleAndTooMuchOfMineLiesTheNext() {
    MadeTrials made = eight();
    mine(made, 2).was(Effect.TOO_LITTLE);
    mine(made, 1.5).was(Effect.TOO_LITTLE);
    mine(made, 8).was(Effect.TOO_MUCH);
    Next next = next(made);
    assertEquals(4, next.dose(), 4 * ROUNDING);
    assertEquals(2, next.tooLittle(), 1e-9);
    assertEquals(8, next.tooMuch(), 1e-9);
    assertFalse(next.contradicting());
  }

  @Test
  void afterOneFailureTheMiddleIsNextUnlessItWasTried() {
    MadeTrials low = eight();
    mine(low, 1).was(Effect.TOO_LITTLE);
    assertEquals(middle(low), next(low).dose(), middle(low) * ROUNDING);
    MadeTrials beyond = eight();
    mine(beyond, 5).was(Effect.TOO_LITTLE);
    assertTrue(next(beyond).dose() > 5 * 1.1, next(beyond).toString());
    MadeTrials under = eight();
    mine(under, 1).was(Effect.TOO_MUCH);
    assertTrue(next(under).dose() < 1 / 1.1, next(under).toString());
  }

  @Test
  void resultsThatDoNotFitEachOtherAreSaidToBeSo() {
    MadeTrials made = eight();
    mine(made, 4).was(Effect.TOO_LITTLE);
    mine(made, 2).was(Effect.TOO_MUCH);
    assertTrue(next(made).contradicting());
  }

  @Test
  void whatWasRightOnMyMachineNeedsNoNext() {
    MadeTrials made = eight();
    mine(made, 2).was(Effect.TOO_LITTLE);
    mine(made, 2.6);
    Answer found = answer(made, new Reader(1, 77, diode(10, 100.0, null)));
    assertTrue(found.next().isEmpty());
    assertEquals(2.6, found.right().orElseThrow().dose(), 1e-9);
  }

  @Test
  void aCutIsSolvedByItsLineDose() {
    MadeTrials made = new MadeTrials();
    for (int member = 1; member <= 4; member++) {
      peer(made, member, 10, 100, 10)
          .of(Process.CUT)
          .with(Measure.LINE_SPACING, Double.NaN)
          .dose(1);
    }
    Start start = answer(made, diode(10, 100.0, null)).start().orElseThrow();
    assertEquals(10, start.settings().speedMmS(), 1e-9);
    assertEquals(1, start.dose(), 1e-9);
  }

  /** Half a step of at most a twentieth: never more than 2.5 % off. */
  @Test
  void roundedValuesStayNear() {
    assertEquals(22, Aim.rounded(22.3));
    assertEquals(1250, Aim.rounded(1234));
    assertEquals(0.1, Aim.rounded(0.1));
    assertEquals(0.34, Aim.rounded(0.337));
    for (double value = 0.013; value < 4000; value *= 1.07) {
      assertEquals(value, Aim.rounded(value), value * 0.0251);
    }
  }
}
