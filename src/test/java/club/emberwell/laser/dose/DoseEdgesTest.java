package club.emberwell.laser.dose;

import static club.emberwell.laser.Printed.assertPrinted;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.laser.DoseKind;
import club.emberwell.laser.Emission;
import club.emberwell.laser.Laser;
import club.emberwell.laser.LaserSource;
import club.emberwell.laser.Motion;
import club.emberwell.laser.Process;
import club.emberwell.laser.Regime;
import club.emberwell.laser.Settings;
import club.emberwell.laser.Trials;
import club.emberwell.laser.dose.Transfer.Outcome;
import club.emberwell.laser.dose.Transfer.Question;
import club.emberwell.laser.dose.Transfer.Verdict;
import club.emberwell.remark.Remark;
import java.util.HashSet;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Just at a limit of a machine or of a rule, and what is told beside a dose. */
class DoseEdgesTest {
  private static Laser laser(double nm, double rated, Regime regime, Double top) {
    return new Laser(
        LaserSource.FIBRE, nm, rated, Motion.GALVO, Emission.of(regime), null, 50.0, top);
  }

  private static Outcome judged(Laser from, Laser to) {
    Settings used = Trials.watts(20, 200, 0.1, 1);
    return Transfer.judge(
        new Question(from, used, to, null, Process.SURFACE_ENGRAVING, true, true));
  }

  // P = F v h / n: 1 J/mm2 x 400 mm/s x 0.1 mm / 2
  @Test
  void twoRunsNeedHalfThePower() {
    assertPrinted("20.0", IsoDose.powerFor(DoseKind.AREAL, 1, 400, 0.1, 2));
    assertPrinted("400.0", IsoDose.speedFor(DoseKind.AREAL, 1, 20, 0.1, 2));
  }

  // 40 W reach 1 J/mm2 at 400 mm/s and 0.1 mm; 20 W at 200 mm/s, the machine's highest
  @Test
  void theLineOfEqualDoseEndsAtTheHighestSpeedOnce() {
    Laser laser = laser(1064, 40, Regime.CW, 200.0);
    List<IsoDose.Point> line = IsoDose.line(laser, DoseKind.AREAL, 1, 0.1, 1);
    assertEquals(10, line.size());
    assertEquals(new IsoDose.Point(50, 20, 200), line.get(9));
    assertEquals(line.size(), new HashSet<>(line).size());
  }

  @Test
  void aMachineThatJustRunsTheScaledSpeedIsNotSaidToBeSlow() {
    Laser from = laser(1064, 40, Regime.CW, null);
    Outcome just = judged(from, laser(1064, 40, Regime.CW, 200.0));
    assertEquals(Verdict.START_OF_GRID, just.verdict());
    assertEquals(200, just.speedMmS());
    assertFalse(just.reasons().stream().anyMatch(reason -> reason.contains("lowered")));
    Outcome slow = judged(from, laser(1064, 40, Regime.CW, 199.0));
    assertEquals(199, slow.speedMmS());
    assertTrue(slow.reasons().stream().anyMatch(reason -> reason.contains("lowered")));
  }

  @Test
  void pulsesAreComparedWhereEitherLaserHasThem() {
    Laser steady = laser(1064, 40, Regime.CW, null);
    Laser pulsed = laser(1064, 40, Regime.NS, null);
    Laser unsaid = laser(1064, 40, null, null);
    for (Outcome with :
        List.of(judged(steady, pulsed), judged(pulsed, steady), judged(unsaid, pulsed))) {
      assertTrue(names(with).contains("peak fluence"), () -> names(with).toString());
    }
    for (Outcome without : List.of(judged(steady, steady), judged(steady, unsaid))) {
      assertFalse(names(without).contains("peak fluence"), () -> names(without).toString());
    }
  }

  private static List<String> names(Outcome outcome) {
    return outcome.sideBySide().stream().map(Comparison::name).toList();
  }

  // absorption changes from line to line: outside the bands only 10 nm are the same line
  @ParameterizedTest
  @CsvSource({"1550, 1560, true", "1560, 1550, true", "1550, 1560.1, false"})
  void outsideTheBandsOnlyTheSameLineIsComparable(double from, double to, boolean same) {
    Outcome outcome = judged(laser(from, 40, Regime.CW, null), laser(to, 40, Regime.CW, null));
    assertEquals(same, outcome.verdict() != Verdict.NO_TRANSFER);
    if (!same) {
      assertEquals(
          List.of(
              "These settings are for 1550 nm, your laser has 1560 nm: they do not carry over."),
          outcome.reasons());
    }
  }

  @Test
  void betweenBandsTheBandsAreNamed() {
    assertEquals(
        List.of(
            "These settings are for 900-1100 nm, your laser has 405-455 nm: they do not carry over."),
        judged(laser(1064, 40, Regime.CW, null), laser(445, 40, Regime.CW, null)).reasons());
  }

  @Test
  void everyVerdictHasItsWord() {
    assertEquals(
        List.of("start-of-grid", "weak", "side-by-side", "no-transfer"),
        Stream.of(Verdict.values()).map(Verdict::code).toList());
    assertEquals("Does not carry over", Verdict.NO_TRANSFER.label());
  }

  @Test
  void aRemarkNamesTheUsualBand() {
    Laser laser = Trials.co2(7000);
    Settings settings = Trials.watts(6001, 10, null, 1);
    List<Remark> remarks =
        Plausibility.check(laser, Process.CUT, settings, Dose.derive(laser, Process.CUT, settings));
    assertEquals(
        List.of("6001 W is outside the usual 0 to 6000 W."),
        remarks.stream().map(Remark::detail).toList());
  }

  // energy balance: F = P n / (v h), 40 W, 400 mm/s, 0.1 mm
  @Test
  void anOpenedDoseShowsItsFormulaAndInputs() {
    Laser laser = Trials.co2(40);
    Settings settings = Trials.percent(100, 400, 0.1, 1);
    Formula formula = DoseFormula.AREAL_DOSE.explain(laser, Process.SURFACE_ENGRAVING, settings);
    assertEquals("Energy per area (dose, nominal)", formula.name());
    assertEquals("J/mm2", formula.unit());
    assertEquals("F = P × n / (v × h)", formula.text());
    assertEquals(
        List.of(40.0, 1.0, 400.0, 0.1),
        formula.inputs().stream().map(Formula.Input::value).toList());
    Derived derived = Dose.derive(laser, Process.SURFACE_ENGRAVING, settings);
    assertPrinted("1.0", DoseFormula.AREAL_DOSE.value(derived));
    for (DoseFormula each : DoseFormula.values()) {
      assertTrue(
          Stream.of(each.field(), each.title(), each.text(), each.source())
              .noneMatch(String::isBlank));
      assertTrue(each.caveats().stream().noneMatch(String::isBlank));
    }
    assertEquals("J/mm2", DoseFormula.AREAL_DOSE.unit());
  }
}
