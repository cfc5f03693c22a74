package club.emberwell.laser.dose;

import club.emberwell.laser.DoseKind;
import club.emberwell.laser.Laser;
import java.util.ArrayList;
import java.util.List;

/** Speeds that give one nominal dose at other powers, within what a machine can do. */
public final class IsoDose {
  /** Steps of the rated power, in percent, at which a line of equal dose is drawn. */
  static final int STEP_PERCENT = 5;

  private IsoDose() {}

  /**
   * One combination that gives the dose.
   *
   * @param powerPercent of rated power
   * @param powerW W
   * @param speedMmS mm/s
   */
  public record Point(double powerPercent, double powerW, double speedMmS) {}

  /**
   * Speed in mm/s for a dose: v = P n / (F h), for line work v = P n / E_l.
   *
   * @param dose J/mm2 for area work, J/mm for line work
   * @param powerW average power, W
   * @param spacingMm mm; not used for line work
   * @param runs passes, a cross pass counted twice
   */
  public static double speedFor(
      DoseKind kind, double dose, double powerW, double spacingMm, double runs) {
    double width = kind == DoseKind.AREAL ? spacingMm : 1;
    return powerW * runs / (dose * width);
  }

  /**
   * Power in W that gives the dose at a speed in mm/s; the counterpart of {@link #speedFor}.
   *
   * @param spacingMm mm; not used for line work
   */
  public static double powerFor(
      DoseKind kind, double dose, double speedMmS, double spacingMm, double runs) {
    double width = kind == DoseKind.AREAL ? spacingMm : 1;
    return dose * speedMmS * width / runs;
  }

  /**
   * The line of equal dose on a machine, from low to rated power in steps of {@value #STEP_PERCENT}
   * %, cut where the machine's highest speed is reached; the cut itself is the last point. Where
   * the owner stated no highest speed only the rated power bounds it. Never empty.
   */
  public static List<Point> line(
      Laser laser, DoseKind kind, double dose, double spacingMm, double runs) {
    double rated = laser.ratedPowerW();
    List<Point> points = new ArrayList<>();
    for (int percent = STEP_PERCENT; percent <= 100; percent += STEP_PERCENT) {
      double power = rated * percent / 100;
      double speed = speedFor(kind, dose, power, spacingMm, runs);
      Double top = laser.maxSpeedMmS();
      if (top != null && speed >= top) {
        double powerAtTop = powerFor(kind, dose, top, spacingMm, runs);
        points.add(new Point(100 * powerAtTop / rated, powerAtTop, top));
        break;
      }
      points.add(new Point(percent, power, speed));
    }
    return List.copyOf(points);
  }
}
