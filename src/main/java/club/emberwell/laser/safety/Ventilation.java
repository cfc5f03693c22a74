package club.emberwell.laser.safety;

import club.emberwell.remark.Coded;
import java.util.Locale;

/**
 * Air through a duct and a room. The numbers describe flow, not whether fumes are harmless: local
 * codes and a licensed ventilation engineer decide.
 */
public final class Ventilation {
  /** One cubic foot per minute in m3/h, exact: 0.3048^3 x 60. */
  public static final double M3H_PER_CFM = 1.69901079552;

  /** One foot per minute in m/s, exact. */
  public static final double MS_PER_FPM = 0.00508;

  /** Said wherever one of these numbers is shown. */
  public static final String CLOSING =
      "A calculation only. Follow local rules and ask a qualified ventilation engineer.";

  /**
   * Minutes that particles of cut acrylic are given off for at least once the lid is open: Munoz et
   * al., J. Chem. Health Saf. 2023, doi 10.1021/acs.chas.3c00013.
   */
  public static final int ACRYLIC_MINUTES = 20;

  private Ventilation() {}

  /**
   * Usual velocities that keep what is carried from settling in the duct, m/s. ACGIH Industrial
   * Ventilation, 2009 table as quoted on a public page.
   */
  public enum Carried implements Coded {
    VAPOUR_GAS_SMOKE("vapours, gases, smoke", 5, 10),
    FUME("fume, as from welding", 10, 13),
    FINE_LIGHT_DUST("very fine light dust, as wood flour", 12, 15),
    DRY_DUST("dry dust", 15, 20),
    INDUSTRIAL_DUST("average industrial dust", 18, 20),
    HEAVY_DUST("heavy dust", 20, 23);

    private final String label;
    private final double fromMs;
    private final double toMs;

    Carried(String label, double fromMs, double toMs) {
      this.label = label;
      this.fromMs = fromMs;
      this.toMs = toMs;
    }

    @Override
    public String code() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    public String label() {
      return label;
    }

    public double fromMs() {
      return fromMs;
    }

    public double toMs() {
      return toMs;
    }
  }

  /** Area of a round duct in m2, A = pi d^2 / 4, from its inner diameter in mm. */
  public static double ductAreaM2(double diameterMm) {
    double metres = diameterMm / 1000;
    return Math.PI * metres * metres / 4;
  }

  /** Air velocity in m/s, v = Q / A, from a flow in m3/h. */
  public static double velocityMs(double flowM3h, double diameterMm) {
    return flowM3h / 3600 / ductAreaM2(diameterMm);
  }

  /** Flow in m3/h that gives a velocity in m/s, Q = A v. */
  public static double flowM3h(double velocityMs, double diameterMm) {
    return velocityMs * ductAreaM2(diameterMm) * 3600;
  }

  /** Air speed in m/s through an opening of some m2, v = Q / A. */
  public static double openingMs(double flowM3h, double openingM2) {
    return flowM3h / 3600 / openingM2;
  }

  /** Air changes per hour of a room, from m3/h and m3. */
  public static double airChangesPerHour(double flowM3h, double roomM3) {
    return flowM3h / roomM3;
  }

  /**
   * Minutes until well-mixed room air has lost a share of what was in it, t = ln(C0/C) / ACH.
   *
   * @param removedShare between 0 and 1, e.g. 0.99
   */
  public static double purgeMinutes(double airChangesPerHour, double removedShare) {
    return -Math.log1p(-removedShare) / airChangesPerHour * 60;
  }
}
