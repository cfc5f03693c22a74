package club.emberwell.laser.dose;

import club.emberwell.laser.Amount;
import club.emberwell.laser.Laser;
import club.emberwell.laser.Motion;
import club.emberwell.laser.Regime;
import club.emberwell.laser.Setting;
import club.emberwell.quantity.Bounds;
import club.emberwell.quantity.QuantityKind;

/**
 * What a laser can be told at all, by the bounds of {@link PlausibilityRules}: of the readings of
 * an ambiguous text only these are worth a question.
 */
public final class Possible {
  /** Share of the rated power below which nobody works; common practice, no source. */
  private static final double LEAST_SHARE = 0.01;

  /** Below this no laser that engraves or cuts is set; common practice, no source. */
  private static final double LEAST_W = 0.5;

  private static final double WHOLE = 100;

  private Possible() {}

  /**
   * @param laser null = not known: then what no such machine can be told
   * @param amount in the canonical unit of one of the setting's kinds
   */
  public static boolean on(Laser laser, Setting setting, Amount amount) {
    double number = amount.number();
    if (laser == null) {
      return anywhere(setting, amount);
    }
    return switch (setting) {
      case POWER -> power(laser, amount);
      case SPEED -> number > 0 && number <= fastest(laser);
      case LINE_SPACING -> PlausibilityRules.SPACING.hold(number);
      case REPETITION_RATE ->
          (laser.regime() == Regime.NS ? PlausibilityRules.NANOSECOND_RATE : PlausibilityRules.RATE)
              .hold(number);
      case PULSE_DURATION -> number > 0 && pulse(laser, Regime.ofPulseDuration(number));
      default -> usual(setting, number);
    };
  }

  private static boolean anywhere(Setting setting, Amount amount) {
    double number = amount.number();
    return switch (setting) {
      case POWER ->
          amount.kind() == QuantityKind.POWER
              ? number >= LEAST_W && PlausibilityRules.POWER.hold(number)
              : isShare(number / WHOLE, 1);
      case SPEED -> number > 0 && number <= PlausibilityRules.SPEED.high();
      case LINE_SPACING -> PlausibilityRules.SPACING.hold(number);
      case REPETITION_RATE -> PlausibilityRules.RATE.hold(number);
      default -> usual(setting, number);
    };
  }

  private static boolean power(Laser laser, Amount amount) {
    double share =
        amount.kind() == QuantityKind.POWER
            ? amount.number() / laser.ratedPowerW()
            : amount.number() / WHOLE;
    double most = amount.kind() == QuantityKind.POWER ? PlausibilityRules.ABOVE_RATED : 1;
    return isShare(share, most);
  }

  private static boolean isShare(double share, double most) {
    return share >= LEAST_SHARE && share <= most;
  }

  /** What its owner says, else what machines of the kind reach, mm/s. */
  private static double fastest(Laser laser) {
    if (laser.maxSpeedMmS() != null) {
      return laser.maxSpeedMmS();
    }
    return laser.motion() == Motion.GANTRY
        ? PlausibilityRules.GANTRY_SPEED.high()
        : PlausibilityRules.SPEED.high();
  }

  private static boolean pulse(Laser laser, Regime of) {
    return laser.regime() == Regime.CW ? of == Regime.LONG : of == laser.regime();
  }

  private static boolean usual(Setting setting, double number) {
    Bounds bounds = setting.value().usual() == null ? null : setting.value().usual().bounds();
    return bounds == null || bounds.hold(number);
  }
}
