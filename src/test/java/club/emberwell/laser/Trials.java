package club.emberwell.laser;

import club.emberwell.quantity.QuantityKind;

/** Lasers and settings for tests, with everything left out that a test does not name. */
public final class Trials {
  private Trials() {}

  public static Laser co2(double ratedW) {
    return new Laser(
        LaserSource.CO2,
        10600,
        ratedW,
        Motion.GANTRY,
        new Emission(Regime.CW, true),
        null,
        null,
        null);
  }

  public static Laser diode(double ratedW) {
    return new Laser(
        LaserSource.DIODE,
        450,
        ratedW,
        Motion.GANTRY,
        new Emission(Regime.CW, true),
        null,
        null,
        null);
  }

  public static Laser fibre(double ratedW, Double beamUm) {
    return new Laser(
        LaserSource.FIBRE, 1064, ratedW, Motion.GALVO, Emission.of(Regime.NS), null, beamUm, null);
  }

  /** Only a power, in % of the rated power. */
  public static Settings ofPercent(Double percent) {
    return Settings.NONE.with(
        Setting.POWER, percent == null ? null : new Amount(QuantityKind.POWER_PERCENT, percent));
  }

  public static Settings watts(double powerW, double speed, Double spacing, Integer passes) {
    return with(Settings.ofWatts(powerW), speed, spacing, passes);
  }

  public static Settings percent(double percent, double speed, Double spacing, Integer passes) {
    return with(ofPercent(percent), speed, spacing, passes);
  }

  public static Settings pulsed(
      double powerW, double speed, Double spacing, Double khz, Double ns) {
    return watts(powerW, speed, spacing, null)
        .with(Setting.REPETITION_RATE, khz)
        .with(Setting.PULSE_DURATION, ns);
  }

  private static Settings with(Settings power, double speed, Double spacing, Integer passes) {
    return power
        .with(Setting.SPEED, speed)
        .with(Setting.LINE_SPACING, spacing)
        .with(Setting.PASSES, passes);
  }
}
