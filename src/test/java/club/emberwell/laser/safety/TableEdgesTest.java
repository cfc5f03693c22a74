package club.emberwell.laser.safety;

import static club.emberwell.laser.Printed.assertPrinted;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.laser.safety.En207.Condition;
import club.emberwell.laser.safety.EyeLimits.Edition;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Where one row of a printed table ends and the next begins: Directive 2006/25/EC Annex II Tables
 * 2.2 to 2.5 and ICNIRP, Health Phys. 105(3) 271-295 (2013), values computed by hand from the row
 * the table gives the edge to.
 */
class TableEdgesTest {

  // at 1399.9 nm C_C = 8 + 10^(0.04 x 149.9); the wavelength rows: 315 to 400, 400 to 700, 1050 to
  // 1400, 2600 to 10^6 nm; nothing between
  @ParameterizedTest
  @CsvSource({
    "314.9, 10, ",
    "315, 10, 1000",
    "399.9, 10, 1000",
    "400, 10, 10",
    "1399.9, 10, 49541997",
    "1400, 10, ",
    "2599.9, 10, ",
    "2600, 10, 1000",
    "1000000, 10, 1000",
    "1000001, 10, ",
    "532, 30000, 10",
    "532, 30001, ",
  })
  void aRowBeginsAtItsFirstWavelength(double nm, double seconds, String irradiance) {
    assertEquals(irradiance != null, EyeLimits.limit(nm, seconds).isPresent());
    EyeLimits.limit(nm, seconds).ifPresent(limit -> assertPrinted(irradiance, limit.irradiance()));
  }

  @ParameterizedTest
  @CsvSource({
    "532, ICNIRP_2013, 1e-11",
    "400, ICNIRP_2013, 1e-11",
    "1399, ICNIRP_2013, 1e-11",
    "532, IEC_2014, 1e-11",
    "532, DIRECTIVE_2006_25, 1e-9",
    "355, ICNIRP_2013, 1e-9",
    "10600, ICNIRP_2013, 1e-9",
  })
  void aTableKnowsNoShorterPulse(double nm, Edition edition, double shortest) {
    assertTrue(EyeLimits.limit(nm, shortest, edition).isPresent());
    assertFalse(EyeLimits.limit(nm, 0.99 * shortest, edition).isPresent());
  }

  // J/m2; at the edge the longer row counts: 18 C_A t^0.75, 90 C_C t^0.75, 5600 t^0.25
  @ParameterizedTest
  @CsvSource({
    "532, 4.99e-6, ICNIRP_2013, 0.0020000",
    "532, 5e-6, ICNIRP_2013, 0.0019033",
    "532, 17.9e-6, DIRECTIVE_2006_25, 0.0050000",
    "532, 18e-6, DIRECTIVE_2006_25, 0.0049742",
    "1064, 12.9e-6, ICNIRP_2013, 0.0200000",
    "1064, 13e-6, ICNIRP_2013, 0.0194850",
    "1064, 49.9e-6, DIRECTIVE_2006_25, 0.0500000",
    "1064, 50e-6, DIRECTIVE_2006_25, 0.0535143",
    "10600, 0.99e-7, ICNIRP_2013, 100.00",
    "10600, 1e-7, ICNIRP_2013, 99.58",
    "1049.9, 1e-7, ICNIRP_2013, 0.0100",
    "1050, 1e-7, ICNIRP_2013, 0.0200",
  })
  void aRowBeginsAtItsFirstDuration(double nm, double t, Edition edition, String expected) {
    assertPrinted(expected, EyeLimits.limit(nm, t, edition).orElseThrow().radiantExposure());
  }

  // C_A(808) = 10^0.216 = 1.6444, C_C(1175) = 10^0.45 = 2.8184
  @ParameterizedTest
  @CsvSource({
    "808, 1e-9, ICNIRP_2013, 0.0032887",
    "808, 1e-9, DIRECTIVE_2006_25, 0.0082219",
    "1175, 1e-7, ICNIRP_2013, 0.056368",
    "1175, 1e-7, DIRECTIVE_2006_25, 0.140919",
    "1175, 1, ICNIRP_2013, 253.654",
    "1175, 10, ICNIRP_2013, 1409.19",
  })
  void aCorrectionRaisesTheLimit(double nm, double t, Edition edition, String expected) {
    assertPrinted(expected, EyeLimits.limit(nm, t, edition).orElseThrow().radiantExposure());
  }

  @Test
  void aCorrectionBeginsAtItsFirstWavelength() {
    assertPrinted("5.0000", EyeLimits.ca(1050));
    assertPrinted("8.0000", EyeLimits.cc(1200, Edition.DIRECTIVE_2006_25));
    assertPrinted("8.0100", EyeLimits.cc(1200, Edition.ICNIRP_2013)); // 8 + 10^-2
  }

  // 1.5 t^0.375: 3^0.375 = 1.50980
  @Test
  void theApertureGrowsFromAThirdOfASecondOn() {
    assertEquals(1, EyeLimits.apertureMm(355, 0.35));
    assertPrinted("2.2647", EyeLimits.apertureMm(355, 3));
    assertEquals(7, EyeLimits.apertureMm(400, 0.1));
    assertEquals(1, EyeLimits.apertureMm(1400, 0.1));
  }

  @ParameterizedTest
  @CsvSource({"399.9, 10", "400, 0.25", "700, 0.25", "700.1, 10"})
  void lightIsSeenFromFourHundredToSevenHundred(double nm, double seconds) {
    assertEquals(seconds, EyeLimits.accidentalSeconds(nm));
  }

  @Test
  void whatALimitRestsOnFollowsFromBeamAndTime() {
    String edition = "Point source, one exposure, the eye only; limits of ICNIRP 2013.";
    String turned =
        "The eye is assumed to turn away within 0.25 s. This does not protect anybody who stares or is"
            + " dazzled.";
    assertEquals(List.of(edition, turned), assumptions(532, 0.25));
    assertEquals(List.of(edition), assumptions(532, 0.26));
    assertEquals(2, assumptions(1064, 9.9).size());
    assertEquals(List.of(edition), assumptions(1064, 10));
  }

  private static List<String> assumptions(double nm, double seconds) {
    return EyeLimits.limit(nm, seconds).orElseThrow().assumptions();
  }

  /** The table ends at 10 s for an invisible beam: less is taken as 10 s, and said so. */
  @Test
  void aShorterLookIntoAnInvisibleBeamCountsAsTenSeconds() {
    assertEquals(10, Eyewear.density(1064, 1, 9.9, null).orElseThrow().limit().seconds());
    assertEquals(10, Eyewear.density(1064, 1, 10, null).orElseThrow().limit().seconds());
    String used = "10 s was used";
    assertTrue(said(Eyewear.density(1064, 1, 9.9, null).orElseThrow().assumptions(), used));
    assertFalse(said(Eyewear.density(1064, 1, 10, null).orElseThrow().assumptions(), used));
    // 1 mJ at 30 kHz is 30 W over 7 mm: 779 530 W/m2; over 0.25 s 25.456, over 10 s 10 W/m2
    assertPrinted(
        "4.486",
        Eyewear.pulsed(532, 1, 100, 30, 0.25, Edition.ICNIRP_2013).orElseThrow().average());
    assertPrinted(
        "4.892", Eyewear.pulsed(532, 1, 100, 30, 10, Edition.ICNIRP_2013).orElseThrow().average());
  }

  private static boolean said(List<String> sentences, String words) {
    return sentences.stream().anyMatch(sentence -> sentence.contains(words));
  }

  // EN 207's columns: 180 to 315, above to 1400, above to 10^6 nm (from memory)
  @ParameterizedTest
  @CsvSource({
    "179.9, 1e3, ",
    "180, 1e3, 6",
    "315, 1e3, 6",
    "315.1, 1e3, 2",
    "1400, 1e7, 6",
    "1400.1, 1e7, 4",
    "1000000, 1e7, 4",
    "1000001, 1e7, ",
    "1064, 0, ",
    "1064, 1e11, 10",
    "1064, 1.1e11, ",
    "1064, 1, 1",
  })
  void aScaleNumberOfAContinuousBeam(double nm, double load, Integer number) {
    assertEquals(number, En207.scale(Condition.D, nm, load).map(En207.Scale::number).orElse(null));
  }

  // 1 mJ over 1 mm is 1273.2 J/m2; beyond the retina's band a short pulse counts by its power
  @ParameterizedTest
  @CsvSource({
    "1064, 1, 1e-4, 6.929", // lg 1273.2 + 4 - lg 1.5
    "10600, 1, 1e-4, 5.105", // lg (1273.2 / 1e-13 s) - 11
    "1064, 1, 100, 5.406", // lg 1273.2 + 3 - lg 5
    "1064, 1000, 1e9, 5.105", // 1 J in 1 s: lg 1.2732e6 - 1
  })
  void aScaleNumberOfAPulse(double nm, double energyMj, double ns, String exact) {
    assertPrinted(exact, En207.pulse(nm, energyMj, ns, 1).orElseThrow().exact());
  }

  @Test
  void aPulseIsSaidToNeedASecondNumberAndASteadyBeamIsNot() {
    String second = "the average power needs its own number";
    assertTrue(said(En207.pulse(1064, 1, 100, 1).orElseThrow().assumptions(), second));
    assertFalse(said(En207.continuous(1064, 1, 1).orElseThrow().assumptions(), second));
  }

  // sqrt(rho P cos(theta) / (pi MPE)): 60 degrees halve the cosine
  @Test
  void aMattReflectionReachesLessFarAtAnAngle() {
    assertPrinted("0.1118", HazardDistance.diffuse(1, 25.456, 1, 0).metres());
    assertPrinted("0.0791", HazardDistance.diffuse(1, 25.456, 1, Math.PI / 3).metres());
  }

  // ACGIH Industrial Ventilation, 2009 table as quoted on a public page
  @Test
  void dryDustNeedsFifteenToTwentyMetresASecond() {
    assertEquals(15, Ventilation.Carried.DRY_DUST.fromMs());
    assertEquals(20, Ventilation.Carried.DRY_DUST.toMs());
    assertEquals("dry dust", Ventilation.Carried.DRY_DUST.label());
  }
}
