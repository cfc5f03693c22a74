package club.emberwell.laser;

/** Single pulses: energy, peak power, peak fluence, and what a Q-switch ties together. */
public final class Pulse {
  private Pulse() {}

  /**
   * How a pulse rises and falls; its duration is the full width at half maximum. Factors: RP
   * Photonics Encyclopedia, "Peak Power" (0.94 and 0.88 from memory, recomputed exactly).
   */
  public enum Shape {
    SQUARE(1),
    /** 2 sqrt(ln 2 / pi) = 0.9394. */
    GAUSSIAN(2 * Math.sqrt(Math.log(2) / Math.PI)),
    /** ln(1 + sqrt 2) = 0.8814. */
    SECH2(Math.log(1 + Math.sqrt(2)));

    private final double factor;

    Shape(double factor) {
      this.factor = factor;
    }

    /** Peak power = factor x energy / duration. */
    public double factor() {
      return factor;
    }
  }

  /**
   * A pulse train.
   *
   * @param averagePowerW W
   * @param repetitionRateKhz kHz
   * @param durationNs ns, FWHM
   */
  public record Train(double averagePowerW, double repetitionRateKhz, double durationNs) {
    /** mJ. */
    public double energyMj() {
      return Pulse.energyMj(averagePowerW, repetitionRateKhz);
    }

    /** kW. */
    public double peakPowerKw(Shape shape) {
      return Pulse.peakPowerKw(energyMj(), durationNs, shape);
    }

    /**
     * The same actively Q-switched laser at another repetition rate, where pulse duration follows
     * from it: at the same average power, twice the rate halves the energy, doubles the duration
     * and quarters the peak power. Holds above the inverse upper-state lifetime and not for a
     * source that sets the duration by itself. RP Photonics Spotlight 2008-09-24.
     */
    public Train qSwitchedAt(double otherRateKhz) {
      return new Train(
          averagePowerW, otherRateKhz, durationNs * (otherRateKhz / repetitionRateKhz));
    }
  }

  /** Pulse energy Q = P/f in mJ from W and kHz. ISO 11145 (from memory). */
  public static double energyMj(double averagePowerW, double repetitionRateKhz) {
    return averagePowerW / repetitionRateKhz;
  }

  /** Peak power in kW from mJ and ns. */
  public static double peakPowerKw(double energyMj, double durationNs, Shape shape) {
    return shape.factor() * energyMj * 1000 / durationNs;
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
