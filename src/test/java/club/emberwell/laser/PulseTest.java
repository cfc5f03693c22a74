package club.emberwell.laser;

import static club.emberwell.laser.Printed.assertPrinted;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PulseTest {
  // RP Photonics Encyclopedia, "Peak Power" (from memory; constants recomputed exactly)
  @ParameterizedTest
  @CsvSource({"SQUARE, 1, 6666.7", "GAUSSIAN, 0.9394, 6262.9", "SECH2, 0.8814, 5875.8"})
  void peakPowerDependsOnTheShapeOfThePulse(Pulse.Shape shape, String factor, String watts) {
    assertPrinted(factor, shape.factor());
    assertPrinted(watts, new Pulse.Train(20, 30, 100).peakPowerKw(shape) * 1000);
  }

  // RP Photonics Spotlight 2008-09-24, "Decoupling Pulse Duration and Pulse Energy"
  @Test
  void doublingTheRateOfAQSwitchQuartersThePeakPower() {
    Pulse.Train slow = new Pulse.Train(20, 20, 100);
    assertPrinted("1.0", slow.energyMj());
    assertPrinted("10", slow.peakPowerKw(Pulse.Shape.SQUARE));
    Pulse.Train fast = slow.qSwitchedAt(40);
    assertPrinted("0.5", fast.energyMj());
    assertPrinted("200", fast.durationNs());
    assertPrinted("2.5", fast.peakPowerKw(Pulse.Shape.SQUARE));
  }

  // RP Photonics Spotlight 2009-10-03, "Peak Intensity of Gaussian Beam"
  @Test
  void fluenceOnTheAxisIsTwiceTheMean() {
    assertPrinted("67.906", Pulse.peakFluence(20.0 / 30, 50));
    assertPrinted("33.953", Pulse.meanFluence(20.0 / 30, 50));
  }

  // An open formulary's example: P = I0 pi w0^2 / 2, I0 = 1e18 W/cm2, w0 = 1 um
  @Test
  void irradianceOnTheAxisAgreesWithAnOpenFormulary() {
    assertPrinted("1.00000000", Pulse.peakIrradiance(1.57079633e10, 2) / 1e18);
  }
}
