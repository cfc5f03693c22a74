package club.emberwell.laser;

/**
 * A focused beam and how it widens away from focus. ISO 11146-1 with a thin lens; Siegman, Lasers
 * (1986) (from memory). All diameters are 1/e2.
 *
 * @param diameterUm diameter at focus, um
 * @param beamRatio beam propagation ratio M2, at least 1
 * @param wavelengthNm nm
 */
public record Spot(double diameterUm, double beamRatio, double wavelengthNm) {

  /**
   * The spot behind a lens, d0 = 4 M2 lambda f / (pi D).
   *
   * @param focalMm focal length, mm
   * @param beamMm beam diameter at the lens, mm; for a scan head the smaller of beam and aperture
   */
  public static Spot focused(double beamRatio, double wavelengthNm, double focalMm, double beamMm) {
    double diameterUm = 4 * beamRatio * wavelengthNm / 1000 * focalMm / (Math.PI * beamMm);
    return new Spot(diameterUm, beamRatio, wavelengthNm);
  }

  /** Distance in mm at which the area has doubled, z_R = pi d0^2 / (4 M2 lambda). */
  public double rayleighMm() {
    return Math.PI * diameterUm * diameterUm / (4 * beamRatio * wavelengthNm);
  }

  /** Two Rayleigh lengths, mm: at its ends the diameter has grown by the square root of two. */
  public double depthOfFocusMm() {
    return 2 * rayleighMm();
  }

  /** Diameter in um at a focus offset in mm, either way: d0 sqrt(1 + (z / z_R)^2). */
  public double diameterAtUm(double offsetMm) {
    return diameterUm * Math.sqrt(areaGrowth(offsetMm));
  }

  /** How many times the area at focus the beam covers at an offset in mm. */
  public double areaGrowth(double offsetMm) {
    double lengths = offsetMm / rayleighMm();
    return 1 + lengths * lengths;
  }

  /** Where an f-theta lens puts the beam, mm off the axis: x = f theta (from memory). */
  public static double scanPositionMm(double focalMm, double angleRad) {
    return focalMm * angleRad;
  }

  /** Side of the field of an f-theta lens, mm: about 2 f theta_max (from memory). */
  public static double fieldSideMm(double focalMm, double greatestAngleRad) {
    return 2 * scanPositionMm(focalMm, greatestAngleRad);
  }
}
