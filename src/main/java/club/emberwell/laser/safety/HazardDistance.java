package club.emberwell.laser.safety;

import java.util.ArrayList;
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
   * @param formula with symbols, not numbers
   */
  public record Distance(double metres, String formula, List<String> assumptions, String closing) {
    public Distance {
      assumptions = List.copyOf(assumptions);
    }

    /** The same, resting on one thing more. */
    public Distance assuming(String further) {
      List<String> all = new ArrayList<>(assumptions);
      all.add(further);
      return new Distance(metres, formula, all, closing);
    }
  }

  /**
   * How the diameter and divergence were stated. With 1/e values the mean over the beam equals the
   * peak of a Gaussian; 1/e2 values need twice the power for the same peak.
   */
  public enum Edge {
    ONE_OVER_E(4, "1/e"),
    ONE_OVER_E2(8, "1/e²");

    private final int factor;
    private final String label;

    Edge(int factor, String label) {
      this.factor = factor;
      this.label = label;
    }

    private String width() {
      return "√(%d P / (π limit))".formatted(factor);
    }
  }

  /**
   * Of the bare beam: (sqrt(4P/(pi MPE)) - a) / phi, or with 8P for 1/e2 values.
   *
   * @param limit irradiance limit, W/m2
   * @param apertureMm beam diameter where it leaves the machine, mm; null where nobody knows it:
   *     then nothing is taken off, which is the longest distance
   * @param divergenceMrad full angle, mrad
   */
  public static Distance direct(
      double powerW, double limit, Double apertureMm, double divergenceMrad, Edge edge) {
    String geometry = "Straight beam without a lens, nothing in its way; it widens evenly.";
    double width = width(powerW, limit, edge);
    double radian = divergenceMrad / 1000;
    if (apertureMm == null) {
      String formula = edge.width() + " / φ, φ (full angle) as " + edge.label + " value";
      return answer(width / radian, formula, geometry)
          .assuming(
              "Nobody said how wide the beam is where it leaves, so it counts as a point there:"
                  + " the distance is a little longer for it.");
    }
    return answer(
        Math.max(0, width - apertureMm / 1000) / radian,
        "(%s − a) / φ, a and φ (full angle) as %s values".formatted(edge.width(), edge.label),
        geometry);
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
        focalMm / beamMm * width(powerW, limit, edge),
        "(f / b) %s, b as %s value".formatted(edge.width(), edge.label),
        "Measured from the focus of the lens.");
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
        "√(ρ P cos θ / (π limit))",
        "Matt surface; a shiny one reflects the beam much further.");
  }

  private static double width(double powerW, double limit, Edge edge) {
    return Math.sqrt(edge.factor * powerW / (Math.PI * limit));
  }

  private static Distance answer(double metres, String formula, String geometry) {
    return new Distance(
        metres,
        formula,
        List.of(geometry, "Full stated power; no loss in air; no optical aids."),
        EyeLimits.CLOSING);
  }
}
