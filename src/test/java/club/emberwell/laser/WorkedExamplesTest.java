package club.emberwell.laser;

import static club.emberwell.laser.Printed.assertPrinted;
import static org.junit.jupiter.api.Assertions.assertEquals;

import club.emberwell.laser.safety.Ventilation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Air, each computed from the source named beside it. */
class WorkedExamplesTest {
  // A = pi d^2 / 4, Q = A v; exact factors of foot and minute
  @ParameterizedTest
  @CsvSource({
    "4, 0.0081073, 0.087266, 174.5, 218.2, 291.9, 4583.7",
    "5, 0.0126677, 0.136354, 272.7, 340.9, 456.0, 2933.5",
    "6, 0.0182415, 0.196350, 392.7, 490.9, 656.7, 2037.2",
    "8, 0.0324293, 0.349066, 698.1, 872.7, 1167.5, 1145.9",
  })
  void airInARoundDuct(
      double inches, String m2, String ft2, String at2000, String at2500, String at10, String fpm) {
    double mm = inches * 25.4;
    assertPrinted(m2, Ventilation.ductAreaM2(mm));
    assertPrinted(ft2, Ventilation.ductAreaM2(mm) / (0.3048 * 0.3048));
    assertPrinted(at2000, cfm(2000, mm));
    assertPrinted(at2500, cfm(2500, mm));
    assertPrinted(at10, Ventilation.flowM3h(10, mm));
    assertPrinted(
        fpm, Ventilation.velocityMs(400 * Ventilation.M3H_PER_CFM, mm) / Ventilation.MS_PER_FPM);
  }

  private static double cfm(double fpm, double mm) {
    return Ventilation.flowM3h(fpm * Ventilation.MS_PER_FPM, mm) / Ventilation.M3H_PER_CFM;
  }

  @Test
  void sixHundredCubicMetresRaceThroughANarrowDuct() {
    assertPrinted("9.137", Ventilation.velocityMs(600, 6 * 25.4));
    assertPrinted("20.56", Ventilation.velocityMs(600, 4 * 25.4));
  }

  // ACH = Q 60 / V in cfm and ft3 (a USAF bioenvironmental course text)
  @Test
  void airChangesOfARoom() {
    double roomM3 = 20 * 15 * 9 * Math.pow(0.3048, 3);
    assertPrinted("8.889", Ventilation.airChangesPerHour(400 * Ventilation.M3H_PER_CFM, roomM3));
    assertPrinted("13.6", Ventilation.airChangesPerHour(680, 50));
  }

  // CDC 2003/2005 table gives 23 and 46 min at 6 changes per hour (from memory)
  @ParameterizedTest
  @CsvSource({"0.90, 23.03", "0.99, 46.05"})
  void purgeTimeOfWellMixedAir(double share, String minutes) {
    assertPrinted(minutes, Ventilation.purgeMinutes(6, share));
  }

  // ACGIH Industrial Ventilation, 2009 table as quoted on a public page
  @Test
  void heavierLoadsNeedFasterAir() {
    double last = 0;
    for (Ventilation.Carried carried : Ventilation.Carried.values()) {
      assertEquals(true, carried.fromMs() >= last && carried.toMs() > carried.fromMs());
      last = carried.fromMs();
    }
  }
}
