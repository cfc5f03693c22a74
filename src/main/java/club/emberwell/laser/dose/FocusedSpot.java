package club.emberwell.laser.dose;

import club.emberwell.laser.LaserSource;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * The 1/e2 diameter of a Gaussian beam at the focus of a thin lens, {@code d0 = 4 M2 lambda f / (pi
 * D)} (ISO 11146-1). Calculated, never measured: real lenses and beams are seldom better.
 */
public final class FocusedSpot {
  private static final double UM_PER_NM = 1e-3;

  private FocusedSpot() {}

  /**
   * A lens with the beam that enters it.
   *
   * @param focalMm focal length, mm
   * @param inputMm 1/e2 diameter of the beam before the lens, mm
   */
  public record Lens(double focalMm, double inputMm) {}

  /**
   * Its diameter, um.
   *
   * @param m2 beam propagation ratio
   */
  public static double um(double m2, double wavelengthNm, Lens lens) {
    return 4 * m2 * wavelengthNm * UM_PER_NM * lens.focalMm() / (Math.PI * lens.inputMm());
  }

  /** The same for such a source; empty where the formula does not hold, as for diodes. */
  public static OptionalDouble um(LaserSource source, double wavelengthNm, Lens lens) {
    OptionalDouble m2 = usualM2(source);
    return m2.isEmpty() ? m2 : OptionalDouble.of(um(m2.getAsDouble(), wavelengthNm, lens));
  }

  /** The usual beam propagation ratio; common practice, no source. A diode's beam has not one. */
  public static OptionalDouble usualM2(LaserSource source) {
    return switch (source) {
      case CO2 -> OptionalDouble.of(1.1);
      case FIBRE, INFRARED -> OptionalDouble.of(1.5);
      case GREEN, UV -> OptionalDouble.of(1.2);
      case DIODE -> OptionalDouble.empty();
    };
  }

  /** Lenses and beams such machines often have; common practice, no source. */
  public static List<Lens> usual(LaserSource source) {
    return switch (source) {
      case CO2 -> each(List.of(38.1, 50.8, 63.5, 101.6), List.of(5.0, 7.0));
      case FIBRE, INFRARED -> each(List.of(100.0, 160.0, 210.0, 254.0), List.of(7.0, 10.0));
      case GREEN, UV -> each(List.of(100.0, 160.0, 210.0), List.of(7.0, 10.0));
      case DIODE -> List.of();
    };
  }

  private static List<Lens> each(List<Double> focal, List<Double> input) {
    List<Lens> lenses = new ArrayList<>();
    input.forEach(mm -> focal.forEach(f -> lenses.add(new Lens(f, mm))));
    return lenses;
  }
}
