package club.emberwell.laser.safety;

import java.util.List;

/**
 * Distances within which a beam exceeds a limit. ANSI Z136.1 Appendix B and the OSHA Technical
 * Manual III:6 (both from memory); the lens form and its constants confirmed in an open test suite.
 */
public final class HazardDistance {
  /** Where the formulas come from, for whoever reads one. */
  public static final String SOURCE =
      "ANSI Z136.1 Appendix B and OSHA Technical Manual III:6 (from memory)";

  private HazardDistance() {}

  /**
   * A distance with what it rests on.
   *
   * @param metres m
   */
  public record Distance(double metres, List<String> assumptions, String closing) {
    public Distance {
      assumptions = List.copyOf(assumptions);
    }
  }

  /**
   * How the diameter and divergence were stated. With 1/e values the mean over the beam equals the
   * peak of a Gaussian; 1/e2 values need twice the power for the same peak.
   */
  public enum Edge {
    ONE_OVER_E(4),
    ONE_OVER_E2(8);

    private final double factor;

    Edge(double factor) {
      this.factor = factor;
    }
  }

  /**
   * Of the bare beam: (sqrt(4P/(pi MPE)) - a) / phi, or with 8P for 1/e2 values.
   *
   * @param limit irradiance limit, W/m2
   * @param apertureMm beam diameter where it leaves the machine, mm
   * @param divergenceMrad full angle, mrad
   */
  public static Distance direct(
      double powerW, double limit, double apertureMm, double divergenceMrad, Edge edge) {
    double reach = width(powerW, limit, edge) - apertureMm / 1000;
    return answer(
        Math.max(0, reach) / (divergenceMrad / 1000), "Straight beam, nothing in its way.");
  }

  /**
   * Beyond the focus of a lens: (f/b) sqrt(4P/(pi MPE)).
   *
   * @param focalMm focal length, mm
   * @param beamMm beam diameter at the lens, mm
   */
  public static Distance lens(
      double powerW, double limit, double focalMm, double beamMm, Edge edge) {
    return answer(
        focalMm / beamMm * width(powerW, limit, edge), "Measured from the focus of the lens.");
  }

  /**
   * Of a matt reflection: sqrt(rho P cos(theta) / (pi MPE)).
   *
   * @param reflectance rho, 0 to 1
   * @param angleRad from the normal of the surface
   */
  public static Distance diffuse(double powerW, double limit, double reflectance, double angleRad) {
    return answer(
        Math.sqrt(reflectance * powerW * Math.cos(angleRad) / (Math.PI * limit)),
        "Matt surface; a shiny one reflects the beam much further.");
  }

  private static double width(double powerW, double limit, Edge edge) {
    return Math.sqrt(edge.factor * powerW / (Math.PI * limit));
  }

  private static Distance answer(double metres, String geometry) {
    return new Distance(
        metres,
        List.of(geometry, "Full stated power; no loss in air; no optical aids."),
        EyeLimits.CLOSING);
  }
}
