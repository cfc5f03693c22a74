package club.emberwell.laser.dose;

import static club.emberwell.laser.Printed.assertPrinted;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.laser.DoseKind;
import club.emberwell.laser.Emission;
import club.emberwell.laser.Laser;
import club.emberwell.laser.LaserSource;
import club.emberwell.laser.Motion;
import club.emberwell.laser.Process;
import club.emberwell.laser.Regime;
import club.emberwell.laser.Setting;
import club.emberwell.laser.Settings;
import club.emberwell.laser.Trials;
import club.emberwell.laser.dose.Transfer.Outcome;
import club.emberwell.laser.dose.Transfer.Question;
import club.emberwell.laser.dose.Transfer.Verdict;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The bounds are the project's own rules; the studies they rest on stand at {@link Transfer}. */
class TransferTest {
  private static final double BEAM = 150;

  private static Laser laser(LaserSource source, double nm, double rated, Regime regime) {
    return laser(source, nm, rated, regime, BEAM, null);
  }

  private static Laser laser(
      LaserSource source, double nm, double rated, Regime regime, Double beam, Double top) {
    return new Laser(source, nm, rated, Motion.GANTRY, Emission.of(regime), null, beam, top);
  }

  private static Laser co2(double rated, Double beam, Double top) {
    return laser(LaserSource.CO2, 10600, rated, Regime.CW, beam, top);
  }

  private static Outcome engraving(Laser from, Settings used, Laser to, Settings planned) {
    return Transfer.judge(
        new Question(from, used, to, planned, Process.SURFACE_ENGRAVING, true, true));
  }

  /** What would be set on the other machine, without a speed. */
  private static Settings plan(double watts, Double spacing) {
    return plan(watts, spacing, null, null);
  }

  private static Settings plan(double watts, Double spacing, Double khz, Double ns) {
    return Settings.ofWatts(watts)
        .with(Setting.LINE_SPACING, spacing)
        .with(Setting.REPETITION_RATE, khz)
        .with(Setting.PULSE_DURATION, ns);
  }

  // Energy balance: v2 = v1 (P2/P1)(h1/h2)
  @ParameterizedTest
  @CsvSource({"40, 400, 0.1, 60, 0.08, 750, 1.0", "10, 50, 0.1, 5, 0.1, 25, 2.0"})
  void equalDoseScalesTheSpeed(
      double p1, double v1, double h1, double p2, double h2, String v2, String dose) {
    Laser to = co2(60, BEAM, null);
    Outcome outcome = engraving(co2(40, BEAM, null), Trials.watts(p1, v1, h1, 1), to, plan(p2, h2));
    assertEquals(Verdict.START_OF_GRID, outcome.verdict());
    assertPrinted(v2, outcome.speedMmS());
    assertPrinted(dose, Dose.derive(to, Process.SURFACE_ENGRAVING, outcome.start()).arealDose());
    assertEquals(
        "Same nominal dose. A start for a test, not a finished setting.", outcome.reasons().get(0));
  }

  @ParameterizedTest
  @CsvSource({
    "CO2, 10600, FIBRE, 1064", "CO2, 10600, DIODE, 450", "CO2, 10600, UV, 355",
    "FIBRE, 1064, DIODE, 450", "FIBRE, 1064, UV, 355", "DIODE, 450, UV, 355",
    "GREEN, 532, FIBRE, 1064", "GREEN, 532, DIODE, 450", "GREEN, 532, UV, 355",
    "GREEN, 532, CO2, 10600", "INFRARED, 1550, FIBRE, 1064", "INFRARED, 1550, INFRARED, 1940",
    "INFRARED, 1550, CO2, 10600",
  })
  void noNumberCrossesAWavelengthBandInEitherDirection(
      LaserSource a, double nmA, LaserSource b, double nmB) {
    Settings used = Trials.watts(10, 100, 0.1, 1);
    Laser one = laser(a, nmA, 20, Regime.CW);
    Laser other = laser(b, nmB, 20, Regime.CW);
    for (Outcome outcome :
        new Outcome[] {engraving(one, used, other, null), engraving(other, used, one, null)}) {
      assertEquals(Verdict.NO_TRANSFER, outcome.verdict());
      assertTrue(outcome.reasons().get(0).endsWith("they do not carry over."));
      assertNoNumber(outcome);
    }
  }

  @ParameterizedTest
  @CsvSource({
    "CW, NS",
    "CW, LONG",
    "CW, PS",
    "CW, FS",
    "NS, LONG",
    "NS, PS",
    "NS, FS",
    "LONG, PS",
    "LONG, FS",
    "PS, FS"
  })
  void noNumberCrossesARegimeInEitherDirection(Regime a, Regime b) {
    Settings used = Trials.pulsed(10, 100, 0.1, 30.0, 100.0);
    Laser one = laser(LaserSource.FIBRE, 1064, 20, a);
    Laser other = laser(LaserSource.FIBRE, 1064, 20, b);
    for (Outcome outcome :
        new Outcome[] {engraving(one, used, other, null), engraving(other, used, one, null)}) {
      assertEquals(Verdict.NO_TRANSFER, outcome.verdict());
      assertTrue(outcome.reasons().get(0).endsWith("they do not carry over."));
      assertNoNumber(outcome);
    }
  }

  @Test
  void aRegimeThatIsNotStatedGivesNoNumber() {
    Outcome outcome =
        engraving(
            laser(LaserSource.FIBRE, 1064, 20, null),
            Trials.watts(10, 100, 0.1, 1),
            laser(LaserSource.FIBRE, 1064, 20, Regime.NS),
            null);
    assertEquals(Verdict.SHOW_SIDE_BY_SIDE, outcome.verdict());
    assertNoNumber(outcome);
  }

  @Test
  void aGatedAndASteadyContinuousLaserAreOfOneKind() {
    Laser gated =
        new Laser(
            LaserSource.CO2,
            10600,
            40,
            Motion.GANTRY,
            new Emission(Regime.CW, true),
            null,
            BEAM,
            null);
    Outcome outcome =
        engraving(gated, Trials.watts(20, 100, 0.1, 1), co2(40, BEAM, null), plan(30, 0.1));
    assertEquals(Verdict.START_OF_GRID, outcome.verdict());
  }

  @ParameterizedTest
  @CsvSource({
    "10, 20, START_OF_GRID", // twofold
    "10, 20.1, WEAK",
    "10, 50, WEAK",
    "10, 50.1, NO_TRANSFER",
    "40, 20, START_OF_GRID",
    "40, 19.9, WEAK",
    "50, 10, WEAK",
    "50, 9.9, NO_TRANSFER",
  })
  void theFurtherApartThePowersTheWeakerTheVerdict(double p1, double p2, Verdict verdict) {
    Outcome outcome =
        engraving(
            co2(100, BEAM, null),
            Trials.watts(p1, 100, 0.1, 1),
            co2(100, BEAM, null),
            plan(p2, 0.1));
    assertEquals(verdict, outcome.verdict());
    assertEquals(verdict.givesNumber(), outcome.speedMmS() != null);
    if (verdict == Verdict.WEAK) {
      assertTrue(outcome.reasons().get(0).contains("Test from half to one and a half times."));
    }
  }

  @Test
  void aSpeedTooFarApartWeakensToo() {
    Laser laser = co2(100, BEAM, null);
    Settings used = Trials.watts(20, 100, 0.1, 1);
    assertEquals(Verdict.WEAK, engraving(laser, used, laser, plan(20, 0.04)).verdict());
    assertEquals(Verdict.NO_TRANSFER, engraving(laser, used, laser, plan(20, 0.01)).verdict());
  }

  @ParameterizedTest
  @CsvSource({
    "187.5, START_OF_GRID",
    "188, SHOW_SIDE_BY_SIDE",
    "112.5, START_OF_GRID",
    "112, SHOW_SIDE_BY_SIDE",
    ", WEAK"
  })
  void spotsMoreThanAQuarterApartAreNotComparedByDose(Double beam, Verdict verdict) {
    Outcome outcome =
        engraving(
            co2(40, BEAM, null), Trials.watts(20, 100, 0.1, 1), co2(40, beam, null), plan(20, 0.1));
    assertEquals(verdict, outcome.verdict());
    if (verdict == Verdict.SHOW_SIDE_BY_SIDE) {
      assertNoNumber(outcome);
      assertNotNull(named(outcome, "irradiance on the axis").ratio());
    }
  }

  @Test
  void aFocusOffsetMakesTheSpotUnknown() {
    Settings defocused = Trials.watts(20, 100, 0.1, 1).with(Setting.FOCUS_OFFSET, 3.0);
    Laser laser = co2(40, BEAM, null);
    assertEquals(Verdict.WEAK, engraving(laser, defocused, laser, null).verdict());
  }

  @Test
  void otherWorkGivesNoNumber() {
    Laser laser = co2(40, BEAM, null);
    Settings used = Trials.watts(20, 10, null, 1);
    Outcome thickness =
        Transfer.judge(new Question(laser, used, laser, null, Process.CUT, false, true));
    assertEquals(Verdict.SHOW_SIDE_BY_SIDE, thickness.verdict());
    assertTrue(thickness.reasons().get(0).contains("does not scale in a straight line"));
    Outcome coating =
        Transfer.judge(new Question(laser, used, laser, null, Process.CUT, true, false));
    assertEquals(Verdict.SHOW_SIDE_BY_SIDE, coating.verdict());
    assertNoNumber(coating);
  }

  @Test
  void cutsScaleByLineDose() {
    Outcome outcome =
        Transfer.judge(
            new Transfer.Question(
                co2(40, BEAM, null),
                Trials.watts(40, 10, null, 1),
                co2(60, BEAM, null),
                plan(60, null),
                Process.CUT,
                true,
                true));
    assertEquals(Verdict.START_OF_GRID, outcome.verdict());
    assertPrinted("15", outcome.speedMmS());
  }

  @Test
  void withoutSpeedOrSpacingThereIsNoEqualDose() {
    Laser laser = co2(40, BEAM, null);
    Outcome outcome = engraving(laser, Trials.watts(20, 100, null, 1), laser, plan(20, 0.1));
    assertEquals(Verdict.SHOW_SIDE_BY_SIDE, outcome.verdict());
    assertNoNumber(outcome);
  }

  @Test
  void whatIsNotPlannedIsTakenOverAndCutToTheRatedPower() {
    Outcome outcome =
        engraving(co2(80, BEAM, null), Trials.percent(50, 400, 0.1, 2), co2(30, BEAM, null), null);
    assertEquals(30, outcome.start().powerW());
    assertEquals(2, outcome.start().passes());
    assertPrinted("300", outcome.speedMmS());
  }

  @Test
  void aMachineThatIsTooSlowGetsLessPowerInstead() {
    Laser slow = co2(60, BEAM, 500.0);
    Outcome outcome =
        engraving(co2(40, BEAM, null), Trials.watts(40, 400, 0.1, 1), slow, plan(60, 0.08));
    assertPrinted("500", outcome.speedMmS());
    assertPrinted("40", outcome.start().powerW());
    assertPrinted("1.0", Dose.derive(slow, Process.SURFACE_ENGRAVING, outcome.start()).arealDose());
    assertTrue(outcome.reasons().stream().anyMatch(r -> r.contains("does not run faster")));
  }

  // Brygo et al., Appl. Surf. Sci. 252 (2006) 2131: duration and rate matter at equal fluence
  @ParameterizedTest
  @CsvSource({
    "50, 30, 100, START_OF_GRID",
    "50, 30, 150, START_OF_GRID", // duration at the bound
    "50, 30, 151, SHOW_SIDE_BY_SIDE",
    "50, 20, 100, START_OF_GRID", // half as much energy again: fluence at the bound
    "50, 19, 100, SHOW_SIDE_BY_SIDE",
    "70, 30, 100, SHOW_SIDE_BY_SIDE", // wider spot: half the fluence
    ", 30, 100, SHOW_SIDE_BY_SIDE",
  })
  void nanosecondWorkIsComparedByFluencePulsesAndDuration(
      Double beam, double khz, double ns, Verdict verdict) {
    Laser to = laser(LaserSource.FIBRE, 1064, 30, Regime.NS, beam, null);
    Outcome outcome =
        engraving(
            Trials.fibre(20, 50.0),
            Trials.pulsed(20, 1000, 0.025, 30.0, 100.0),
            to,
            plan(20, 0.025, khz, ns));
    assertEquals(verdict, outcome.verdict());
    assertTrue(
        outcome.reasons().stream().anyMatch(r -> r.startsWith("Match pulses first, dose last")));
    assertPrinted("67.906", named(outcome, "peak fluence").from());
    assertPrinted("2.35619", named(outcome, "effective pulses per place").from());
    assertEquals(ns, named(outcome, "pulse duration").to());
    if (!verdict.givesNumber()) {
      assertNoNumber(outcome);
    }
  }

  @Test
  void whereNoNumberIsGivenTheReadersOwnSpeedIsShownBesideTheOther() {
    Outcome outcome =
        engraving(
            Trials.fibre(20, 50.0),
            Trials.pulsed(20, 1000, 0.025, 30.0, 100.0),
            Trials.fibre(20, 100.0),
            Trials.pulsed(20, 500, 0.025, 30.0, 100.0));
    assertEquals(Verdict.SHOW_SIDE_BY_SIDE, outcome.verdict());
    assertNull(outcome.speedMmS());
    assertEquals(500, named(outcome, "speed").to());
    assertPrinted("0.25", named(outcome, "peak fluence").ratio());
    assertPrinted("8.0", named(outcome, "effective pulses per place").ratio());
    assertPrinted("1.6", named(outcome, "energy per area (dose, nominal)").to());
    assertPrinted("0.83333", named(outcome, "pulse overlap").to());
  }

  @Test
  void aRefusalDoesNotLetTheScalingShowThroughThePower() {
    Outcome outcome =
        engraving(
            co2(40, BEAM, null),
            Trials.watts(40, 400, 0.1, 1),
            laser(LaserSource.DIODE, 450, 60, Regime.CW, BEAM, 100.0),
            plan(60, 0.08));
    assertEquals(60, named(outcome, "average power").to());
    assertNoNumber(outcome);
  }

  @ParameterizedTest
  @CsvSource({"LONG, 2000", "PS, 0.1", "FS, 0.005"})
  void otherPulsedWorkHasNoRule(Regime regime, double ns) {
    Laser laser = laser(LaserSource.FIBRE, 1064, 20, regime);
    Outcome outcome = engraving(laser, Trials.pulsed(10, 100, 0.1, 30.0, ns), laser, null);
    assertEquals(Verdict.SHOW_SIDE_BY_SIDE, outcome.verdict());
    assertNoNumber(outcome);
  }

  @Test
  void aLineOfEqualDoseEndsAtTheLimitsOfTheMachine() {
    var line = IsoDose.line(co2(60, null, 500.0), DoseKind.AREAL, 1.0, 0.08, 1);
    IsoDose.Point last = line.get(line.size() - 1);
    assertPrinted("500", last.speedMmS());
    assertPrinted("40", last.powerW());
    assertPrinted("66.667", last.powerPercent());
    for (IsoDose.Point point : line) {
      Settings settings = Trials.watts(point.powerW(), point.speedMmS(), 0.08, 1);
      assertPrinted(
          "1.000000000",
          Dose.derive(co2(60, null, null), Process.DEEP_ENGRAVING, settings).arealDose());
    }
    var whole = IsoDose.line(co2(60, null, null), DoseKind.LINE, 4.0, Double.NaN, 2);
    assertEquals(20, whole.size());
    assertPrinted("30", whole.get(19).speedMmS()); // 60 W, 2 passes, 4 J/mm
    assertEquals(1, IsoDose.line(co2(60, null, 1.0), DoseKind.LINE, 0.001, Double.NaN, 1).size());
  }

  @Test
  void aLineSpacingThatNobodyStatedIsAReasonAndNotAFault() {
    Settings used = Trials.watts(20, 200, null, 1);
    Outcome outcome =
        Transfer.judge(
            new Transfer.Question(
                co2(60, null, null),
                used,
                co2(60, null, null),
                null,
                Process.DEEP_ENGRAVING,
                true,
                true));
    assertNoNumber(outcome);
    assertTrue(outcome.reasons().get(0).contains("missing"));
  }

  private static Comparison named(Outcome outcome, String name) {
    return outcome.sideBySide().stream().filter(c -> c.name().equals(name)).findFirst().get();
  }

  /** Neither the scaled speed nor anything that it could be computed back from. */
  private static void assertNoNumber(Outcome outcome) {
    assertFalse(outcome.verdict().givesNumber());
    assertNull(outcome.start());
    assertNull(outcome.speedMmS());
    assertFalse(outcome.sideBySide().isEmpty());
    assertNull(named(outcome, "speed").to());
    for (Comparison comparison : outcome.sideBySide()) {
      boolean speedInIt =
          comparison.name().contains("pulses")
              || comparison.name().contains("dose")
              || comparison.name().contains("overlap");
      assertTrue(!speedInIt || comparison.to() == null, comparison.name());
    }
  }
}
