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
import club.emberwell.laser.dose.Comparison;
import club.emberwell.laser.dose.IsoDose;
import club.emberwell.laser.dose.Transfer.Verdict;
import club.emberwell.search.query.Measure;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A range carried to one machine. The rules of transfer are checked in {@code laser}. */
class OnMyMachineTest {

  private static Laser laser(double nm, Regime regime, double ratedW, Double beamUm) {
    return new Laser(
        LaserSource.CO2, nm, ratedW, Motion.GANTRY, Emission.of(regime), null, beamUm, 600.0);
  }

  private static MadeTrials.Trial peer(MadeTrials made, long member, double watts, double speed) {
    return made.by(member)
        .with(Measure.POWER_W, watts)
        .with(Measure.SPEED, speed)
        .with(Measure.LINE_SPACING, 0.1)
        .with(Measure.RATED_POWER, 40)
        .with(Measure.BEAM_DIAMETER, 150)
        .dose(watts / (speed * 0.1));
  }

  /** Four members at 20 W and 200 to 260 mm/s. */
  private static MadeTrials peers(WavelengthBand band, Regime regime) {
    MadeTrials made = new MadeTrials();
    for (int member = 1; member <= 4; member++) {
      peer(made, member, 20, 180 + 20 * member).at(band).in(regime);
    }
    return made;
  }

  private static OnMyMachine on(Laser mine, MadeTrials made, Double spacing) {
    Group group = made.group();
    Range range = Range.of(group, false);
    return OnMyMachine.of(
        group,
        new OnMyMachine.Said(range, Window.of(group, range.dose()), Optional.empty(), 1),
        mine,
        spacing);
  }

  private static double nm(WavelengthBand band) {
    return switch (band) {
      case UV_355 -> 355;
      case BLUE -> 450;
      case GREEN_532 -> 532;
      case NEAR_INFRARED -> 1064;
      case CO2_10600 -> 10_600;
      case OTHER -> 2000;
    };
  }

  @ParameterizedTest
  @EnumSource(WavelengthBand.class)
  void noNumberIsCarriedToAnotherWavelength(WavelengthBand theirs) {
    for (WavelengthBand band : WavelengthBand.values()) {
      double nm = nm(band);
      Laser mine = laser(nm, Regime.CW, 40, 150.0);
      OnMyMachine found = on(mine, peers(theirs, Regime.CW), null);
      boolean same = band == theirs && band != WavelengthBand.OTHER;
      assertEquals(
          same, found.judgement().verdict() == Verdict.START_OF_GRID, band + " from " + theirs);
      if (!same) {
        assertEquals(Verdict.NO_TRANSFER, found.judgement().verdict());
        assertFalse(found.judgement().reasons().isEmpty());
        assertTrue(found.equalDose().lines().isEmpty());
      }
    }
  }

  @ParameterizedTest
  @EnumSource(Regime.class)
  void noNumberIsCarriedToAnotherPulseRegime(Regime theirs) {
    for (Regime regime : Regime.values()) {
      if (regime == theirs) {
        continue;
      }
      OnMyMachine found =
          on(laser(1064, regime, 40, 150.0), peers(WavelengthBand.NEAR_INFRARED, theirs), null);
      assertEquals(Verdict.NO_TRANSFER, found.judgement().verdict(), regime + " from " + theirs);
      assertTrue(found.equalDose().lines().isEmpty());
    }
  }

  @Test
  void everyPointOfALineHasItsDoseAndStaysWithinTheMachinesLimits() {
    OnMyMachine found =
        on(laser(10_600, Regime.CW, 60, 150.0), peers(WavelengthBand.CO2_10600, Regime.CW), 0.08);
    assertEquals(OnMyMachine.Basis.QUARTILES, found.equalDose().basis().orElseThrow());
    assertEquals(3, found.equalDose().lines().size());
    for (OnMyMachine.Line line : found.equalDose().lines()) {
      for (IsoDose.Point point : line.points()) {
        assertEquals(line.dose(), point.powerW() / (point.speedMmS() * 0.08), 1e-9);
        assertTrue(point.speedMmS() <= 600 && point.powerW() <= 60 + 1e-9);
      }
      assertEquals(600, line.points().get(line.points().size() - 1).speedMmS(), 1e-9);
    }
    assertTrue(found.equalDose().lines().get(0).dose() < found.equalDose().lines().get(2).dose());
  }

  @Test
  void theLinesLieInTheWindowWhereThereIsOne() {
    MadeTrials made = peers(WavelengthBand.CO2_10600, Regime.CW);
    for (int member = 1; member <= 4; member++) {
      peer(made, member, 20, 900).was(Effect.TOO_LITTLE);
      peer(made, member, 20, 60).was(Effect.TOO_MUCH);
    }
    OnMyMachine found = on(laser(10_600, Regime.CW, 40, 150.0), made, null);
    assertEquals(OnMyMachine.Basis.WINDOW, found.equalDose().basis().orElseThrow());
    assertEquals(0.1, found.equalDose().spacingMm(), 1e-12);
    Window window = Window.of(made.group(), made.range().dose());
    assertEquals(window.lower().dose(), found.equalDose().lines().get(0).dose(), 1e-9);
    assertEquals(window.upper().dose(), found.equalDose().lines().get(2).dose(), 1e-9);
  }

  @Test
  void belowThreeVoicesAndWithoutAWindowThereAreNoLines() {
    MadeTrials made = new MadeTrials();
    peer(made, 1, 20, 200);
    peer(made, 2, 20, 220);
    OnMyMachine found = on(laser(10_600, Regime.CW, 40, 150.0), made, null);
    assertEquals(Verdict.START_OF_GRID, found.judgement().verdict());
    assertTrue(found.equalDose().lines().isEmpty());
    assertTrue(found.equalDose().basis().isEmpty());
  }

  @Test
  void aMachineUnlikeMostPeersGetsNoNumberThoughOneIsLikeIt() {
    MadeTrials made = new MadeTrials();
    peer(made, 1, 20, 200);
    for (int member = 2; member <= 4; member++) {
      peer(made, member, 20, 200 + member).with(Measure.BEAM_DIAMETER, 400);
    }
    OnMyMachine found = on(laser(10_600, Regime.CW, 40, 150.0), made, null);
    assertEquals(Verdict.SHOW_SIDE_BY_SIDE, found.judgement().verdict());
    assertEquals(1, found.judgement().verdicts().get(Verdict.START_OF_GRID));
    assertEquals(3, found.judgement().verdicts().get(Verdict.SHOW_SIDE_BY_SIDE));
    assertTrue(found.equalDose().lines().isEmpty());
    assertTrue(found.judgement().reasons().get(0).contains("spot sizes differ"));
  }

  @Test
  void powerFarFromPeersIsWeakOrNothing() {
    MadeTrials made = peers(WavelengthBand.CO2_10600, Regime.CW);
    assertEquals(
        Verdict.WEAK, on(laser(10_600, Regime.CW, 6, 150.0), made, null).judgement().verdict());
    assertEquals(
        Verdict.NO_TRANSFER,
        on(laser(10_600, Regime.CW, 2, 150.0), made, null).judgement().verdict());
  }

  @Test
  void pulsedWorkShowsPeersMediansBesideTheMachine() {
    MadeTrials made = new MadeTrials();
    for (int member = 1; member <= 3; member++) {
      peer(made, member, 20, 1000)
          .at(WavelengthBand.NEAR_INFRARED)
          .in(Regime.NS)
          .with(Measure.LINE_SPACING, 0.025)
          .with(Measure.BEAM_DIAMETER, 50)
          .with(Measure.REPETITION_RATE, 30)
          .with(Measure.PULSE_DURATION, 100)
          .with(Measure.PEAK_FLUENCE, 67.906)
          .dose(0.8);
    }
    OnMyMachine found = on(laser(1064, Regime.NS, 20, 50.0), made, null);
    // worked examples 2.6, 2.7, 2.8 and 2.9 of the fact sheet (computed)
    assertBeside(found, "peak fluence", 67.906, 1e-3);
    assertBeside(found, "effective pulses per place", 2.35619, 1e-5);
    assertBeside(found, "pulse overlap", 0.33333, 1e-5);
    assertBeside(found, "pulse duration", 100, 1e-9);
  }

  private static void assertBeside(OnMyMachine found, String name, double peers, double within) {
    Comparison one =
        found.sideBySide().stream().filter(c -> c.name().equals(name)).findFirst().orElseThrow();
    assertEquals(peers, one.from(), within, name);
  }

  @Test
  void lineWorkNeedsNoSpacing() {
    MadeTrials made = new MadeTrials();
    for (int member = 1; member <= 3; member++) {
      made.by(member)
          .of(Process.CUT)
          .with(Measure.POWER_W, 30)
          .with(Measure.SPEED, 10)
          .with(Measure.RATED_POWER, 40)
          .with(Measure.BEAM_DIAMETER, 150)
          .dose(3);
    }
    OnMyMachine found = on(laser(10_600, Regime.CW, 60, 150.0), made, 0.1);
    assertEquals(3, found.equalDose().lines().get(1).dose(), 1e-9);
    assertFalse(found.equalDose().spacingMm() != null);
    IsoDose.Point half = found.equalDose().lines().get(1).points().get(9);
    assertEquals(10, half.speedMmS(), 1e-9);
  }
}
