package club.emberwell.grid.plan;

import club.emberwell.laser.Laser;
import club.emberwell.laser.LaserSource;

/**
 * How wide one may burn on a round piece. With a rotary all round: pi times the diameter. Without
 * one the head moves straight across while the surface falls away; where the highest line is in
 * focus, the surface may lie one Rayleigh length lower: there the beam is sqrt(2) times as wide.
 * That is the chord 2 sqrt(s (D - s)) for a fall s and a diameter D.
 *
 * <p>Rayleigh length pi d0² / (4 M² lambda): ISO 11146-1, Siegman, Lasers (1986) (both from
 * memory).
 */
final class RoundPiece {
  /**
   * How far the surface may fall where the beam is not known, as a share of the diameter: the chord
   * is then 0.28 of it (own rule, no source).
   */
  static final double FALL_SHARE = 0.02;

  private static final double NM_PER_MM = 1e6;
  private static final double UM_PER_MM = 1000;

  private RoundPiece() {}

  /** Width on the circumference, mm. */
  static double around(double diameter) {
    return Math.PI * diameter;
  }

  /** Width of the chord, mm. */
  static double across(double diameter, Laser laser) {
    double fall = Math.min(diameter / 2, fall(diameter, laser));
    return 2 * Math.sqrt(fall * (diameter - fall));
  }

  private static double fall(double diameter, Laser laser) {
    Double beam = laser.beamDiameterUm();
    return beam == null
        ? FALL_SHARE * diameter
        : rayleigh(beam / UM_PER_MM, laser.wavelengthNm() / NM_PER_MM, propagation(laser.source()));
  }

  /** All in mm; {@code propagation} is the beam propagation ratio M². */
  static double rayleigh(double beam, double wavelength, double propagation) {
    return Math.PI * beam * beam / (4 * propagation * wavelength);
  }

  /** The usual beam propagation ratio M² (common practice, no source). */
  static double propagation(LaserSource source) {
    return switch (source) {
      case CO2 -> 1.1;
      case DIODE -> 8;
      case UV -> 1.2;
      case FIBRE, GREEN, INFRARED -> 1.5;
    };
  }

  /** How the width follows, in a sentence. */
  static String why(boolean rotary, Laser laser) {
    if (rotary) {
      return "With the rotary you can burn all round.";
    }
    return laser.beamDiameterUm() == null
        ? "Without a rotary only the top stays in focus. Your beam's width is not known, so we take"
            + " 0.28 of the diameter."
        : "Without a rotary only the top stays in focus: so wide that the surface falls by one"
            + " Rayleigh length of your beam.";
  }
}
