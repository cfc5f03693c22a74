package club.emberwell.laser;

/** Lasers and settings for tests, with everything left out that a test does not name. */
final class Trials {
  private Trials() {}

  static Laser co2(double ratedW) {
    return new Laser(
        LaserSource.CO2, 10600, ratedW, Motion.GANTRY, Regime.CW, true, null, null, null);
  }

  static Laser diode(double ratedW) {
    return new Laser(
        LaserSource.DIODE, 450, ratedW, Motion.GANTRY, Regime.CW, true, null, null, null);
  }

  static Laser fibre(double ratedW, Double beamUm) {
    return new Laser(
        LaserSource.FIBRE, 1064, ratedW, Motion.GALVO, Regime.NS, false, null, beamUm, null);
  }

  static Settings watts(double powerW, double speed, Double spacing, Integer passes) {
    return new Settings(null, powerW, speed, spacing, passes, null, null, null, null, null, null);
  }

  static Settings percent(double percent, double speed, Double spacing, Integer passes) {
    return new Settings(percent, null, speed, spacing, passes, null, null, null, null, null, null);
  }

  static Settings pulsed(double powerW, double speed, Double spacing, Double khz, Double ns) {
    return new Settings(null, powerW, speed, spacing, null, khz, ns, null, null, null, null);
  }
}
