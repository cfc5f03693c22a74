package club.emberwell.grid.plan;

import club.emberwell.grid.reading.Timing;
import club.emberwell.laser.Laser;
import club.emberwell.laser.Motion;

/**
 * How the beam is moved.
 *
 * @param acceleration mm/s2; infinite = no time is lost by it
 * @param overscan mm run at either end of a line with the beam off; null = what it takes to reach
 *     the speed
 * @param jump mm/s with the beam off
 * @param settle s of waiting at each turn
 * @param given whether the member said the acceleration
 */
public record Kinematics(
    double acceleration, Double overscan, double jump, double settle, boolean given) {
  // What is usual where the member says nothing: common practice, no source, all in this place.
  private static final double GANTRY_ACCELERATION = 1000;
  private static final double GANTRY_JUMP = 100;
  private static final double GALVO_JUMP = 4000;
  private static final double GALVO_SETTLE = 0.0005;

  static Kinematics of(Laser laser, Timing timing) {
    boolean given = timing.acceleration() != null;
    if (laser.motion() == Motion.GALVO) {
      double acceleration = given ? timing.acceleration() : Double.POSITIVE_INFINITY;
      double jump = jump(laser, GALVO_JUMP);
      return new Kinematics(acceleration, timing.overscan(), jump, GALVO_SETTLE, given);
    }
    double acceleration = given ? timing.acceleration() : GANTRY_ACCELERATION;
    return new Kinematics(acceleration, timing.overscan(), jump(laser, GANTRY_JUMP), 0, given);
  }

  private static double jump(Laser laser, double usual) {
    return laser.maxSpeedMmS() == null ? usual : laser.maxSpeedMmS();
  }

  /**
   * Seconds from rest to rest over a distance: up to speed, on, and down again; where the way is
   * too short for the speed, half way up and half way down.
   *
   * @param mm way
   * @param speed mm/s at most
   */
  double move(double mm, double speed) {
    if (mm <= 0) {
      return 0;
    }
    return speed * speed / acceleration <= mm
        ? mm / speed + speed / acceleration
        : 2 * Math.sqrt(mm / acceleration);
  }

  /** Way on either side of a line, mm. */
  double beside(double speed) {
    return overscan == null ? speed * speed / (2 * acceleration) : overscan;
  }
}
