package club.emberwell.laser.safety;

import static club.emberwell.laser.Printed.assertPrinted;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.laser.safety.EyeLimits.Edition;
import club.emberwell.laser.safety.EyeLimits.Limit;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Values computed from Directive 2006/25/EC Annex II and ICNIRP, Health Phys. 105(3) 271-295
 * (2013).
 */
class EyeLimitsTest {
  @ParameterizedTest
  @CsvSource({
    "355, 0.25, 15839",
    "355, 10, 1000",
    "355, 100, 100",
    "355, 30000, 0.3333",
    "405, 0.25, 25.456",
    "405, 10, 10",
    "405, 100, 1",
    "405, 30000, 1",
    "445, 0.25, 25.456",
    "445, 10, 10",
    "445, 100, 1",
    "445, 30000, 1",
    "450, 0.25, 25.456",
    "450, 10, 10",
    "450, 100, 1",
    "450, 30000, 1",
    "455, 0.25, 25.456",
    "455, 10, 10",
    "455, 100, 1.2589",
    "455, 30000, 1.2589",
    "532, 0.25, 25.456",
    "532, 10, 10",
    "532, 100, 10",
    "532, 30000, 10",
    "808, 0.25, 41.86",
    "808, 10, 16.444",
    "808, 100, 16.444",
    "808, 30000, 16.444",
    "915, 0.25, 68.52",
    "915, 10, 26.915",
    "915, 100, 26.915",
    "915, 30000, 26.915",
    "940, 0.25, 76.88",
    "940, 10, 30.200",
    "976, 0.25, 90.74",
    "976, 10, 35.645",
    "980, 0.25, 92.42",
    "980, 10, 36.308",
    "1064, 0.25, 127.28",
    "1064, 10, 50",
    "1064, 100, 50",
    "1064, 30000, 50",
    "1080, 0.25, 127.28",
    "1080, 10, 50",
    "1080, 100, 50",
    "1080, 30000, 50",
    "10600, 0.25, 15839",
    "10600, 10, 1000",
    "10600, 100, 1000",
    "10600, 30000, 1000",
  })
  void irradianceLimits(double nm, double seconds, String expected) {
    assertPrinted(expected, limit(nm, seconds).irradiance());
  }

  @Test
  void nearUltravioletIsLimitedByExposure() {
    assertPrinted("3959.8", limit(355, 0.25).radiantExposure());
    assertPrinted("10", EyeLimits.limit(355, 30_000, Edition.IEC_2014).orElseThrow().irradiance());
  }

  @ParameterizedTest
  @CsvSource({"532, 10.122", "1064, 50.611", "10600, 995.84"})
  void atTenSecondsTheLongBranchCountsNotItsNeighbour(double nm, String neighbour) {
    assertPrinted(neighbour, limit(nm, 10 - 1e-9).irradiance());
    assertTrue(limit(nm, 10).rule().startsWith("E = "));
  }

  @ParameterizedTest
  @CsvSource({
    "699, 1",
    "808, 1.6444",
    "915, 2.6915",
    "940, 3.0200",
    "976, 3.5645",
    "980, 3.6308",
    "1064, 5"
  })
  void coefficientA(double nm, String expected) {
    assertPrinted(expected, EyeLimits.ca(nm));
  }

  @ParameterizedTest
  @CsvSource({"405, 1", "450, 1", "455, 1.2589", "532, 43.652"})
  void coefficientB(double nm, String expected) {
    assertPrinted(expected, EyeLimits.cb(nm));
  }

  @Test
  void coefficientCDiffersBetweenTheEditionsAboveTwelveHundred() {
    assertPrinted("1", EyeLimits.cc(1100, Edition.ICNIRP_2013));
    assertPrinted("2.818", EyeLimits.cc(1175, Edition.ICNIRP_2013)); // 10^0.45
    assertPrinted("8.0", EyeLimits.cc(1300, Edition.DIRECTIVE_2006_25));
    assertPrinted("108", EyeLimits.cc(1300, Edition.ICNIRP_2013)); // 8 + 10^2
  }

  @ParameterizedTest
  @CsvSource({
    "355, 0.35, 1",
    "355, 1, 1.5",
    "355, 10, 3.5",
    "450, 0.25, 7",
    "1064, 10, 7",
    "10600, 0.1, 1",
    "10600, 1, 1.5",
    "10600, 10, 3.5"
  })
  void limitingApertures(double nm, double seconds, String mm) {
    assertPrinted(mm, limit(nm, seconds).apertureMm());
  }

  @ParameterizedTest
  @CsvSource({"7, 0.38485", "3.5, 0.096211", "1, 0.0078540"})
  void apertureAreas(double mm, String cm2) {
    assertPrinted(cm2, EyeLimits.areaM2(mm) * 1e4);
  }

  @ParameterizedTest
  @CsvSource({
    "532, 1e-9, ICNIRP_2013, 0.002", "532, 1e-9, DIRECTIVE_2006_25, 0.005",
    "532, 1e-5, DIRECTIVE_2006_25, 0.005", "1064, 1e-7, ICNIRP_2013, 0.02",
    "1064, 1e-7, DIRECTIVE_2006_25, 0.05", "1064, 2e-5, DIRECTIVE_2006_25, 0.05",
    "10600, 1e-8, ICNIRP_2013, 100",
  })
  void shortPulsesAreLimitedByExposure(double nm, double t, Edition edition, String expected) {
    assertPrinted(expected, EyeLimits.limit(nm, t, edition).orElseThrow().radiantExposure());
  }

  // ANSI Z136.1 writes the same limits in J/cm2 (from memory)
  @ParameterizedTest
  @CsvSource({"532, 1.8e-3", "1064, 9.0e-3", "10600, 0.56"})
  void theSameNumbersPerSquareCentimetreAtOneSecond(double nm, String expected) {
    assertPrinted(expected, limit(nm, 1).radiantExposure() / 1e4);
  }

  // IEC 60825-1 Table 1 as cited in open tests: Class 1, cw
  @ParameterizedTest
  @CsvSource({
    "633, 10, 3.8485e-4",
    "450, 100, 3.8485e-5",
    "1064, 100, 1.92e-3",
    "10600, 10, 9.62e-3"
  })
  void classOnePowerIsLimitTimesAperture(double nm, double seconds, String watts) {
    Limit limit = limit(nm, seconds);
    assertPrinted(watts, limit.irradiance() * limit.apertureM2());
  }

  // The same table: 7.9e-6 W at 355 nm, 30 ks, taken over 1 mm
  @Test
  void classOnePowerInTheNearUltraviolet() {
    double limit = EyeLimits.limit(355, 30_000, Edition.IEC_2014).orElseThrow().irradiance();
    assertPrinted("7.9e-6", limit * EyeLimits.areaM2(1));
  }

  // Class 2: 18 x 0.25^-0.25 x pi x (3.5 mm)^2, read in open tests
  @Test
  void classTwoIsAboutAMilliwatt() {
    assertPrinted("0.97966", limit(532, 0.25).irradiance() * limit(532, 0.25).apertureM2() * 1000);
  }

  @Test
  void theAversionResponseIsSaidNotToApplyToInvisibleBeams() {
    assertEquals(0.25, EyeLimits.accidentalSeconds(450));
    assertEquals(10, EyeLimits.accidentalSeconds(1064));
    assertEquals(10, EyeLimits.accidentalSeconds(355));
    for (double nm : new double[] {355, 808, 915, 980, 1064, 10600}) {
      assertTrue(
          limit(nm, 0.25).assumptions().stream().anyMatch(a -> a.contains("does not apply")));
    }
    assertTrue(
        limit(450, 0.25).assumptions().stream().noneMatch(a -> a.contains("does not apply")));
  }

  @Test
  void whereTheTablesAreSilentThereIsNoLimit() {
    assertEquals(Optional.empty(), EyeLimits.limit(300, 10));
    assertEquals(Optional.empty(), EyeLimits.limit(1550, 10));
    assertEquals(Optional.empty(), EyeLimits.limit(532, 1e-13));
    assertEquals(Optional.empty(), EyeLimits.limit(532, 1e-10, Edition.DIRECTIVE_2006_25));
    assertEquals(Optional.empty(), EyeLimits.limit(532, Double.NaN));
  }

  @Test
  void everyLimitEndsWithTheOfficer() {
    assertTrue(
        limit(1064, 10).closing().endsWith("ask a laser safety officer; local rules decide."));
  }

  private static Limit limit(double nm, double seconds) {
    return EyeLimits.limit(nm, seconds).orElseThrow();
  }
}
