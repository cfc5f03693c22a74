package club.emberwell.search;

import club.emberwell.laser.Laser;
import club.emberwell.search.column.PackedCodes;

/**
 * How far another laser is from one's own, for ordering only. Wavelength band and regime decide
 * first, because absorption and mechanism differ between them; inside them the distance is
 *
 * <pre>|ln(P / P0)| + 0.5 |ln(d / d0)| + 0.5 if the motion differs</pre>
 *
 * with the rated power P and the beam diameter d. An unknown beam counts as one twice as wide, an
 * unknown motion as the same. The weights are ours: power sets the dose that can be reached at all,
 * the beam only spreads it.
 */
public final class Closeness {
  static final double OTHER_BAND = 1000;
  static final double OTHER_REGIME = 100;
  static final double BEAM_WEIGHT = 0.5;
  static final double OTHER_MOTION = 0.5;
  static final double UNKNOWN_BEAM = BEAM_WEIGHT * Math.log(2);

  private final Laser mine;

  public Closeness(Laser mine) {
    this.mine = mine;
  }

  /**
   * The distance of a trial's laser, 0 = equal.
   *
   * @param codes as {@link PackedCodes} made them
   * @param ratedPowerW W
   * @param beamDiameterUm um, NaN = not given
   */
  double distance(long codes, double ratedPowerW, double beamDiameterUm) {
    double distance = alike(ratedPowerW, beamDiameterUm, PackedCodes.MOTION.code(codes));
    if (PackedCodes.BAND.raw(codes) != mine.band().ordinal()) {
      distance += OTHER_BAND;
    }
    if (PackedCodes.REGIME.raw(codes) != mine.regime().ordinal()) {
      distance += OTHER_REGIME;
    }
    return distance;
  }

  /**
   * The distance of a laser of the same band and regime.
   *
   * @param ratedPowerW W
   * @param beamDiameterUm um, NaN = not given
   * @param motion place of the {@link club.emberwell.laser.Motion}, below zero = not given
   */
  public double alike(double ratedPowerW, double beamDiameterUm, int motion) {
    double distance = Math.abs(logRatio(ratedPowerW, mine.ratedPowerW())) + beam(beamDiameterUm);
    return motion >= 0 && mine.motion() != null && motion != mine.motion().ordinal()
        ? distance + OTHER_MOTION
        : distance;
  }

  private double beam(double beamDiameterUm) {
    if (mine.beamDiameterUm() == null) {
      return 0;
    }
    return Double.isNaN(beamDiameterUm)
        ? UNKNOWN_BEAM
        : BEAM_WEIGHT * Math.abs(logRatio(beamDiameterUm, mine.beamDiameterUm()));
  }

  private static double logRatio(double a, double b) {
    return a > 0 && b > 0 ? Math.log(a / b) : 10;
  }
}
