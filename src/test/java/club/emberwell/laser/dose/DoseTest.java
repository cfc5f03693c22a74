package club.emberwell.laser.dose;

import static club.emberwell.laser.Printed.assertPrinted;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.laser.Laser;
import club.emberwell.laser.Process;
import club.emberwell.laser.Setting;
import club.emberwell.laser.Settings;
import club.emberwell.laser.Trials;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Worked examples computed from the published formulas named in {@link DoseFormula}. */
class DoseTest {
  // Energy balance of a raster fill; Kudela et al., Coatings 2023, 13(12) 2006
  @ParameterizedTest
  @CsvSource({
    "40, 400, 0.1, 1, 1.0",
    "10, 50, 0.1, 1, 2.0", // 3000 mm/min
    "20, 1000, 0.05, 2, 0.8",
    "60, 750, 0.08, 1, 1.0",
    "20, 1000, 0.025, , 0.8",
    "19.2, 50, 0.02, 1, 19.2", // 304L marking range: 1920 J/cm2
    "19.2, 100, 0.08, 1, 2.4", // ... down to 240 J/cm2
  })
  void arealDoseOfAFill(double w, double speed, double spacing, Integer passes, String dose) {
    Derived derived =
        Dose.derive(
            Trials.co2(100), Process.SURFACE_ENGRAVING, Trials.watts(w, speed, spacing, passes));
    assertPrinted(dose, derived.arealDose());
    assertNull(derived.lineDose());
  }

  // Steen & Mazumder, cutting chapter (from memory); wood: Gurau et al., BioRes 12(4) and 13(4)
  @ParameterizedTest
  @CsvSource({
    "40, 10, 1, 4.0",
    "40, 10, 2, 8.0",
    "5.6, 500, , 0.0112",
    "6.8, 100, 1, 0.068",
    "7.2, 100, 1, 0.072"
  })
  void lineDoseOfACut(double w, double speed, Integer passes, String dose) {
    Derived derived =
        Dose.derive(Trials.co2(100), Process.CUT, Trials.watts(w, speed, 0.1, passes));
    assertPrinted(dose, derived.lineDose());
    assertNull(derived.arealDose());
    assertNull(derived.of(DoseFormula.LINE_OVERLAP));
  }

  @Test
  void percentOfRatedPowerIsNominalPower() {
    Settings settings = Trials.percent(35, 100, 0.1, 1);
    assertPrinted("21", Dose.derive(Trials.co2(60), Process.SCORE, settings).averagePowerW());
  }

  // ISO 11145 (from memory); RP Photonics Spotlight 2009-10-03 for the factor 2 of peak fluence
  @Test
  void aNanosecondTrialHasAllItsPulseValues() {
    Derived derived =
        Dose.derive(
            Trials.fibre(20, 50.0),
            Process.DEEP_ENGRAVING,
            Trials.pulsed(20, 1000, 0.025, 30.0, 100.0));
    assertPrinted("666.667", derived.pulseEnergyMj() * 1000);
    assertPrinted("6666.7", derived.of(DoseFormula.PEAK_POWER) * 1000);
    assertPrinted("67.906", derived.peakFluence());
    assertPrinted("33.333", derived.of(DoseFormula.PULSE_PITCH));
    assertPrinted("0.33333", derived.of(DoseFormula.PULSE_OVERLAP));
    assertPrinted("1.5", derived.of(DoseFormula.PULSES_PER_SPOT));
    assertPrinted("2.35619", derived.of(DoseFormula.PULSES_PER_AREA));
    assertPrinted("0.5", derived.of(DoseFormula.LINE_OVERLAP));
    assertPrinted("0.8", derived.arealDose());
    // the check of the energy balance: pulses per place x mean fluence = areal dose, J/cm2
    assertPrinted("80.0", derived.of(DoseFormula.PULSES_PER_AREA) * derived.peakFluence() / 2);
  }

  @Test
  void pulsesFurtherApartThanTheBeamIsWideLeaveGaps() {
    Derived derived =
        Dose.derive(
            Trials.fibre(20, 50.0),
            Process.COLOUR_MARKING,
            Trials.pulsed(20, 2000, 0.1, 20.0, null));
    assertPrinted("-1.0", derived.of(DoseFormula.PULSE_OVERLAP));
    assertPrinted("-1.0", derived.of(DoseFormula.LINE_OVERLAP));
    assertNull(derived.of(DoseFormula.PEAK_POWER));
  }

  @Test
  void aCrossPassCountsAsTwiceThePassesOfAreaWorkOnly() {
    Settings crossed = Trials.watts(20, 1000, 0.05, 2).with(Setting.CROSS_PASS, true);
    Laser laser = Trials.co2(100);
    assertPrinted("1.6", Dose.derive(laser, Process.COATING_REMOVAL, crossed).arealDose());
    assertPrinted("0.04", Dose.derive(laser, Process.CUT, crossed).lineDose());
  }

  @Test
  void whatIsMissingOrSenselessGivesNoNumber() {
    Laser laser = Trials.co2(100);
    assertEquals(Derived.NOTHING, Dose.derive(laser, Process.SURFACE_ENGRAVING, Settings.NONE));
    assertNull(
        Dose.derive(laser, Process.SURFACE_ENGRAVING, Trials.watts(10, 0, 0.1, 1)).arealDose());
    assertNull(
        Dose.derive(laser, Process.SURFACE_ENGRAVING, Trials.watts(10, 10, -0.1, 1)).arealDose());
    assertNull(Dose.derive(laser, Process.CUT, Trials.watts(10, 10, null, 0)).lineDose());
    assertNull(Dose.derive(laser, Process.CUT, Trials.watts(Double.NaN, 10, null, 1)).lineDose());
    assertEquals(0.0, Dose.derive(laser, Process.CUT, Trials.watts(0, 10, null, 1)).lineDose());
  }

  @Test
  void everyValueOpensToItsFormulaInputsSourceAndCaveats() {
    Laser laser = Trials.fibre(20, 50.0);
    Settings settings = Trials.pulsed(20, 1000, 0.025, 30.0, 100.0);
    Derived area = Dose.derive(laser, Process.DEEP_ENGRAVING, settings);
    Derived line = Dose.derive(laser, Process.CUT, settings);
    for (DoseFormula formula : DoseFormula.values()) {
      assertNotNull(formula.value(formula == DoseFormula.LINE_DOSE ? line : area), formula.field());
      Formula opened = formula.explain(laser, Process.DEEP_ENGRAVING, settings);
      assertFalse(opened.source().isBlank());
      assertFalse(opened.caveats().isEmpty());
      assertFalse(opened.inputs().isEmpty());
      opened.inputs().forEach(input -> assertTrue(opened.text().contains(input.symbol())));
    }
    Formula dose = DoseFormula.AREAL_DOSE.explain(laser, Process.DEEP_ENGRAVING, settings);
    assertEquals("F = P × n / (v × h)", dose.text());
    assertEquals(new Formula.Input("h", "line spacing", 0.025, "mm"), dose.inputs().get(3));
  }
}
