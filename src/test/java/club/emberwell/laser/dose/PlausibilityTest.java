package club.emberwell.laser.dose;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.laser.Emission;
import club.emberwell.laser.Laser;
import club.emberwell.laser.LaserSource;
import club.emberwell.laser.Motion;
import club.emberwell.laser.Process;
import club.emberwell.laser.Regime;
import club.emberwell.laser.Setting;
import club.emberwell.laser.Settings;
import club.emberwell.laser.Trials;
import club.emberwell.remark.Remark;
import club.emberwell.remark.Severity;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Bounds of the trade, from memory unless a source stands beside them. */
class PlausibilityTest {
  private static List<Remark> check(Laser laser, Process process, Settings settings) {
    List<Remark> remarks =
        Plausibility.check(laser, process, settings, Dose.derive(laser, process, settings));
    remarks.forEach(r -> assertEquals(Severity.WARNING, r.severity()));
    return remarks;
  }

  private static List<String> ids(List<Remark> remarks) {
    return remarks.stream().map(Remark::id).toList();
  }

  private static Remark only(List<Remark> remarks, String id) {
    return remarks.stream().filter(r -> r.id().equals(id)).findFirst().orElseThrow();
  }

  // Gurau et al., BioRes 12(4) (2017) and 13(4) (2018); Lazov et al., Materials 2025, 18(21) 5037
  @Test
  void publishedTrialsPassWithoutARemark() {
    assertEquals(List.of(), check(Trials.co2(10), Process.SCORE, Trials.watts(5.6, 500, null, 1)));
    assertEquals(List.of(), check(Trials.co2(10), Process.SCORE, Trials.watts(6.8, 100, null, 1)));
    assertEquals(
        List.of(),
        check(
            Trials.fibre(20, 50.0),
            Process.COLOUR_MARKING,
            Trials.pulsed(19.2, 50, 0.02, 20.0, 4.0)));
    assertEquals(
        List.of(),
        check(
            Trials.fibre(20, 50.0),
            Process.DEEP_ENGRAVING,
            Trials.pulsed(20, 1000, 0.025, 30.0, 100.0)));
  }

  @Test
  void millimetresPerMinuteTypedAsPerSecondAreAskedAbout() {
    Remark remark =
        only(
            check(Trials.diode(10), Process.SURFACE_ENGRAVING, Trials.watts(5, 3000, 0.1, 1)),
            "speed-unlike-motion");
    assertEquals("/settings/speed", remark.field());
    assertEquals(List.of("3000 mm/min", "118.11 mm/s"), remark.readings());
    assertTrue(remark.detail().contains("Did you mean 3000 mm/min or 118.11 mm/s?"));
  }

  @Test
  void theOtherWayRoundIsAskedAboutToo() {
    Remark remark =
        only(
            check(Trials.diode(10), Process.SURFACE_ENGRAVING, Trials.watts(5, 2, 0.1, 1)),
            "speed-slow-for-fill");
    assertEquals(List.of("120 mm/s", "2 in/s"), remark.readings());
  }

  @Test
  void everyGantrySpeedThatWasTypedSixtyTimesTooHighIsNoticedAboveTheBound() {
    for (double mmMin = 1501; mmMin <= 15_000; mmMin += 500) {
      List<Remark> remarks =
          check(Trials.co2(60), Process.SURFACE_ENGRAVING, Trials.watts(30, mmMin, 0.1, 1));
      assertTrue(
          only(remarks, "speed-unlike-motion").readings().get(0).endsWith(" mm/min"), "" + mmMin);
    }
  }

  @Test
  void aScanHeadMayRunFastAndACutSlowly() {
    assertEquals(
        List.of(),
        check(Trials.fibre(20, null), Process.COATING_REMOVAL, Trials.watts(20, 9000, 0.05, 1)));
    assertEquals(List.of(), check(Trials.co2(60), Process.CUT, Trials.watts(50, 1, null, 1)));
  }

  @ParameterizedTest
  @CsvSource({"0.1, true", "0.09, false", "15000, true", "15001, false"})
  void speedBounds(double speed, boolean usual) {
    Laser galvo = Trials.fibre(20, null);
    assertEquals(
        usual,
        !ids(check(galvo, Process.CUT, Trials.watts(10, speed, null, 1)))
            .contains("speed-out-of-range"));
  }

  @ParameterizedTest
  @CsvSource({"0.003, ", "1, ", "2.54, 0.1 mm", "0.0029, 0.07366 mm", "100, "})
  void lineSpacingBounds(double spacing, String reading) {
    List<Remark> remarks =
        check(Trials.co2(60), Process.SURFACE_ENGRAVING, Trials.watts(30, 200, spacing, 1));
    boolean usual = spacing == 0.003 || spacing == 1;
    assertEquals(usual, !ids(remarks).contains("line-spacing-out-of-range"));
    if (!usual) {
      Remark remark = only(remarks, "line-spacing-out-of-range");
      assertEquals("/settings/lineSpacing", remark.field());
      assertEquals(reading == null ? List.of() : List.of(reading), remark.readings());
    }
  }

  @Test
  void powerBeyondTheRatedIsRemarkedOnBeyondFivePercent() {
    Laser laser = Trials.co2(40);
    assertEquals(List.of(), check(laser, Process.CUT, Trials.watts(42, 10, null, 1)));
    List<Remark> above = check(laser, Process.CUT, Trials.watts(42.1, 10, null, 1));
    assertEquals(List.of("power-above-rated"), ids(above));
    assertEquals("42.1 W is more than the rated 40 W.", above.get(0).detail());
    assertEquals("/settings/power", above.get(0).field());
    assertEquals(
        List.of("power-percent-above-100"),
        ids(check(laser, Process.CUT, Trials.percent(101, 10, null, 1))));
    assertEquals(
        List.of("power-out-of-range"),
        ids(check(Trials.co2(7000), Process.CUT, Trials.watts(6001, 10, null, 1))));
  }

  @Test
  void aDiodeOfAHundredWattsIsProbablyMeantElectrically() {
    assertEquals(
        List.of("rated-power-electrical"),
        ids(check(Trials.diode(100), Process.CUT, Trials.watts(20, 10, null, 1))));
  }

  @Test
  void theMachinesOwnHighestSpeedCounts() {
    Laser slow =
        new Laser(
            LaserSource.CO2,
            10600,
            60,
            Motion.GANTRY,
            new Emission(Regime.CW, true),
            null,
            null,
            300.0);
    assertEquals(
        List.of("speed-above-machine"),
        ids(check(slow, Process.SURFACE_ENGRAVING, Trials.watts(30, 400, 0.1, 1))));
  }

  @ParameterizedTest
  @CsvSource({"0, false", "1, true", "500, true", "501, false"})
  void passesBounds(int passes, boolean usual) {
    assertEquals(
        usual,
        !ids(check(Trials.co2(60), Process.SCORE, Trials.watts(1, 500, null, passes)))
            .contains("passes-out-of-range"));
  }

  @Test
  void dosesOutsideAnyTradeAreRemarkedOn() {
    Laser laser = Trials.co2(60);
    assertEquals(
        List.of("areal-dose-out-of-range"),
        ids(check(laser, Process.DEEP_ENGRAVING, Trials.watts(60, 10, 0.01, 1))));
    assertEquals(
        List.of("areal-dose-out-of-range"),
        ids(check(laser, Process.DEEP_ENGRAVING, Trials.watts(0.1, 1000, 0.5, 1))));
    assertEquals(
        List.of("line-dose-out-of-range"),
        ids(check(laser, Process.CUT, Trials.watts(60, 1, null, 50))));
  }

  @Test
  void kilohertzTypedAsHertzAreAskedAbout() {
    Remark remark =
        only(
            check(
                Trials.fibre(20, null),
                Process.COLOUR_MARKING,
                Trials.pulsed(10, 500, 0.05, 0.03, 100.0)),
            "repetition-rate-out-of-range");
    assertEquals("/settings/repetitionRate", remark.field());
    assertEquals(List.of("30 kHz"), remark.readings());
    assertTrue(
        ids(check(
                Trials.fibre(20, null),
                Process.COLOUR_MARKING,
                Trials.pulsed(10, 500, 0.05, 30_000.0, null)))
            .contains("repetition-rate-out-of-range"));
  }

  @Test
  void aPulseDurationThatContradictsTheRegimeIsRemarkedOn() {
    List<Remark> remarks =
        check(
            Trials.fibre(20, null),
            Process.COLOUR_MARKING,
            Trials.pulsed(10, 500, 0.05, 30.0, 2000.0));
    assertEquals(List.of("regime-unlike-duration"), ids(remarks));
    assertEquals(
        "A pulse of 2000 ns is long pulse work; the machine is entered as nanosecond.",
        remarks.get(0).detail());
    // the gates of a dimmed continuous laser are no contradiction
    assertEquals(
        List.of(), check(Trials.co2(60), Process.CUT, Trials.pulsed(30, 10, null, 5.0, 100_000.0)));
  }

  @Test
  void aSteadyTubeHasNoRepetitionRate() {
    Laser tube =
        new Laser(
            LaserSource.CO2, 10600, 60, Motion.GANTRY, Emission.of(Regime.CW), null, null, null);
    List<Remark> remarks = check(tube, Process.CUT, Trials.pulsed(30, 10, null, 20.0, null));
    assertEquals(List.of("repetition-rate-on-cw"), ids(remarks));
    assertTrue(remarks.get(0).detail().contains("CO2 tube"));
    assertEquals(
        List.of(), check(Trials.co2(60), Process.CUT, Trials.pulsed(30, 10, null, 20.0, null)));
  }

  @Test
  void impossiblePulseTrainsAreRemarkedOn() {
    Laser laser = Trials.fibre(20, 50.0);
    assertTrue(
        ids(check(laser, Process.COLOUR_MARKING, Trials.pulsed(10, 500, 0.05, 3000.0, 500.0)))
            .contains("pulse-longer-than-period"));
    assertEquals(
        List.of("pulse-energy-high", "peak-fluence-out-of-range"),
        ids(check(laser, Process.COLOUR_MARKING, Trials.pulsed(20, 500, 0.05, 5.0, 100.0))));
    assertTrue(
        ids(check(laser, Process.COLOUR_MARKING, Trials.pulsed(10, 500, 0.05, 30.0, 2e6)))
            .contains("pulse-duration-out-of-range"));
  }

  @Test
  void aFocusOffsetOfDecimetresIsRemarkedOn() {
    Settings far = Trials.watts(30, 10, null, 1).with(Setting.FOCUS_OFFSET, -60.0);
    assertEquals(
        List.of("focus-offset-out-of-range"), ids(check(Trials.co2(60), Process.CUT, far)));
  }

  @Test
  void aSourceAtAnotherWavelengthIsRemarkedOn() {
    Laser odd =
        new Laser(
            LaserSource.CO2,
            1064,
            60,
            Motion.GANTRY,
            new Emission(Regime.CW, true),
            null,
            null,
            null);
    assertEquals(
        List.of("wavelength-unlike-source"),
        ids(check(odd, Process.CUT, Trials.watts(30, 10, null, 1))));
  }

  @Test
  void senselessNumbersAreSurvived() {
    for (double bad : new double[] {0, -1, Double.NaN, Double.POSITIVE_INFINITY, 1e300}) {
      Settings settings = Settings.NONE;
      for (Setting setting : Setting.values()) {
        if (setting.value().kind().isPresent()) {
          settings = settings.with(setting, bad);
        }
      }
      for (Settings both : List.of(settings.atWatts(bad), settings.or(Trials.ofPercent(bad)))) {
        Settings none = both.with(Setting.PASSES, 0);
        assertFalse(check(Trials.fibre(20, bad), Process.DEEP_ENGRAVING, none).isEmpty());
      }
    }
    assertEquals(List.of(), check(Trials.fibre(20, null), Process.CUT, Settings.NONE));
  }
}
