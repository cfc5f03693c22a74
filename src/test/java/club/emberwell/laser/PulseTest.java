package club.emberwell.laser;

import static club.emberwell.laser.Printed.assertPrinted;

import org.junit.jupiter.api.Test;

class PulseTest {
  // RP Photonics Spotlight 2008-09-24, "Decoupling Pulse Duration and Pulse Energy"
  @Test
  void doublingTheRateOfAQSwitchQuartersThePeakPower() {
    assertPrinted("1.0", Pulse.energyMj(20, 20));
    assertPrinted("10", Pulse.peakPowerKw(1, 100));
    assertPrinted("0.5", Pulse.energyMj(20, 40));
    assertPrinted("2.5", Pulse.peakPowerKw(0.5, 200));
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
