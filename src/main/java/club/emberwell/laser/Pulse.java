package club.emberwell.laser;

/** Single pulses: energy, peak power and peak fluence. */
public final class Pulse {
  private Pulse() {}

  /** Pulse energy Q = P/f in mJ from W and kHz. ISO 11145 (from memory). */
  public static double energyMj(double averagePowerW, double repetitionRateKhz) {
    return averagePowerW / repetitionRateKhz;
  }

  /** Peak power in kW of a square pulse, from mJ and ns (FWHM). */
  public static double peakPowerKw(double energyMj, double durationNs) {
    return energyMj * 1000 / durationNs;
  }

  /**
   * Fluence on the axis of a Gaussian beam, F0 = 2Q/(pi w2), in J/cm2 from mJ and the 1/e2 diameter
   * in um; the mean over the 1/e2 area is half of it. RP Photonics Spotlight 2009-10-03.
   */
  public static double peakFluence(double energyMj, double diameterUm) {
    return 2 * meanFluence(energyMj, diameterUm);
  }

  /** Fluence averaged over the 1/e2 area, Q/(pi w2), in J/cm2 from mJ and um. */
  public static double meanFluence(double energyMj, double diameterUm) {
    double radiusUm = diameterUm / 2;
    return energyMj * 1e5 / (Math.PI * radiusUm * radiusUm);
  }

  /** Irradiance on the axis of a Gaussian beam, 2P/(pi w2), in W/cm2 from W and um. */
  public static double peakIrradiance(double powerW, double diameterUm) {
    return peakFluence(powerW, diameterUm) * 1000;
  }
}
