package club.emberwell.laser;

/** Ablation thresholds of pulsed work. */
public final class Threshold {
  private Threshold() {}

  /**
   * Diameter in um of the crater one Gaussian pulse leaves, D^2 = 2 w^2 ln(F0/Fth); zero below the
   * threshold. J. M. Liu, Opt. Lett. 7, 196 (1982) (from memory).
   *
   * @param radiusUm 1/e2 radius, um
   * @param peakFluence F0, any unit
   * @param threshold Fth, the same unit
   */
  public static double craterDiameterUm(double radiusUm, double peakFluence, double threshold) {
    double ratio = peakFluence / threshold;
    return ratio <= 1 ? 0 : radiusUm * Math.sqrt(2 * Math.log(ratio));
  }

  /**
   * Threshold after N pulses on one place, Fth(N) = Fth(1) N^(S-1), in the unit of the first. Jee,
   * Becker, Walser, JOSA B 5, 648 (1988) (from memory).
   *
   * @param incubation S, below 1; about 0.8 for stainless steel
   */
  public static double afterPulses(double single, double pulses, double incubation) {
    return single * Math.pow(pulses, incubation - 1);
  }
}
