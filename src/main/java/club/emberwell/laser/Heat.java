package club.emberwell.laser;

/** How far and how long heat acts. Steen & Mazumder; Carslaw & Jaeger (both from memory). */
public final class Heat {
  private Heat() {}

  /**
   * Thermal diffusion length in um, here l = 2 sqrt(a t); some texts leave out the 2.
   *
   * @param diffusivity a, m2/s
   * @param seconds t, s
   */
  public static double diffusionLengthUm(double diffusivity, double seconds) {
    return 2e6 * Math.sqrt(diffusivity * seconds);
  }

  /** Dwell time of a moving beam on a point, t = d/v, in us from um and mm/s. */
  public static double dwellTimeUs(double diameterUm, double speedMmS) {
    return diameterUm * 1000 / speedMmS;
  }

  /**
   * Severance energy of a cut, P/(v t), in J/mm2 of cut face. Steen & Mazumder; Powell, CO2 Laser
   * Cutting (1998) (from memory). It does not scale in a straight line with the thickness.
   */
  public static double severanceEnergy(double powerW, double speedMmS, double thicknessMm) {
    return powerW / (speedMmS * thicknessMm);
  }
}
