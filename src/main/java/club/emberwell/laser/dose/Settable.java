package club.emberwell.laser.dose;

import club.emberwell.laser.Setting;
import club.emberwell.laser.Settings;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.quantity.QuantityPrinter;
import club.emberwell.quantity.UnitPreferences;

/**
 * Computed settings whose speed has few figures in the reader's unit.
 *
 * @param dose what they give: it goes with 1 / speed
 */
public record Settable(Settings settings, double dose) {

  /**
   * The nearest to what was computed.
   *
   * @param top the machine's largest speed in mm/s; null = not known
   */
  public static Settable of(Settings computed, double dose, Double top, UnitPreferences reader) {
    Double speed = computed.speedMmS();
    if (speed == null) {
      return new Settable(computed, dose);
    }
    double set = speed(speed, top, reader);
    return set == speed
        ? new Settable(computed, dose)
        : new Settable(computed.with(Setting.SPEED, set), dose * speed / set);
  }

  /** The nearest speed to a computed one, in mm/s. */
  public static double speed(double computed, Double top, UnitPreferences reader) {
    return QuantityPrinter.settable(computed, top, QuantityKind.SPEED, reader);
  }
}
