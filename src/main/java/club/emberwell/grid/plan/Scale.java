package club.emberwell.grid.plan;

import club.emberwell.grid.reading.Axis;
import club.emberwell.laser.Amount;
import club.emberwell.laser.DoseKind;
import club.emberwell.laser.Laser;
import club.emberwell.laser.Motion;
import club.emberwell.laser.Process;
import club.emberwell.laser.Setting;
import club.emberwell.laser.SettingValue.Shape;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.quantity.QuantityPrinter;
import club.emberwell.quantity.RoundNumber;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.stats.Interval;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.DoubleBinaryOperator;

/**
 * One setting as a side of a grid: how far it goes on a machine and what it does to the dose.
 *
 * @param kind null of a whole number
 * @param effect the power of it to which the dose is proportional: 1, -1 or 0
 * @param limits what the machine can be set to, and what is worth testing
 * @param reader in whose unit a speed is rounded
 */
record Scale(
    Setting setting, QuantityKind kind, int effect, Interval limits, UnitPreferences reader) {
  /** Below this share of its power many a source does not burn evenly (own rule, no source). */
  private static final double LEAST_POWER = 0.05;

  /** Of a step: how far a value is rounded (own rule, no source). */
  private static final double SHARE = 0.2;

  /** Share of a limit by which it is rounded (own rule, no source). */
  private static final double FINEST = 0.005;

  // The usual bounds of the trade where the machine's are not known: see PlausibilityRules.
  private static final double SLOWEST_FILL = 3;
  private static final double SLOWEST = 0.1;
  private static final double GANTRY_FASTEST = 1500;
  private static final double GALVO_FASTEST = 15_000;

  /**
   * @param power the kind of quantity power is told in
   */
  static Scale of(
      Setting setting, Laser laser, Process process, QuantityKind power, UnitPreferences reader) {
    boolean area = process.doseKind() == DoseKind.AREAL;
    return switch (setting) {
      case POWER -> {
        double full = power == QuantityKind.POWER ? laser.ratedPowerW() : 100;
        yield new Scale(setting, power, 1, limits(LEAST_POWER * full, full), reader);
      }
      case SPEED -> new Scale(setting, QuantityKind.SPEED, -1, speeds(laser, area), reader);
      case LINE_SPACING ->
          new Scale(setting, QuantityKind.LINE_SPACING, area ? -1 : 0, limits(0.005, 1), reader);
      case PASSES -> new Scale(setting, null, 1, limits(1, 100), reader);
      default ->
          new Scale(
              setting,
              setting.value().kind().orElse(null),
              0,
              limits(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY),
              reader);
    };
  }

  private static Interval speeds(Laser laser, boolean area) {
    boolean gantry = laser.motion() == Motion.GANTRY;
    double usual = gantry ? GANTRY_FASTEST : GALVO_FASTEST;
    double top = laser.maxSpeedMmS() == null ? usual : laser.maxSpeedMmS();
    return limits(Math.min(top, gantry && area ? SLOWEST_FILL : SLOWEST), top);
  }

  private static Interval limits(double low, double high) {
    return new Interval(low, high, 1);
  }

  boolean isCount() {
    return setting.value().shape() == Shape.COUNT;
  }

  /** A number as settings have it. */
  Object value(double number) {
    return kind == null ? (Object) (int) Math.round(number) : new Amount(kind, number);
  }

  /**
   * Values in equal ratio, rising, rounded to what a person can set; the ends outwards, so that
   * what lies between them stays between them.
   *
   * @param step ratio between neighbouring doses, by which is rounded
   */
  Axis between(double low, double high, int count, double step) {
    Set<Object> values = new LinkedHashSet<>();
    for (int i = 0; i < count; i++) {
      double exact = count == 1 ? low : low * Math.pow(high / low, i / (count - 1.0));
      double most = Math.abs(exact) * (step - 1) * SHARE;
      boolean first = i == 0 && count > 1;
      boolean last = i == count - 1 && count > 1;
      DoubleBinaryOperator round = first ? RoundNumber::below : RoundNumber::near;
      values.add(value(held(rounded(last ? RoundNumber::above : round, exact, most))));
    }
    return new Axis(setting, List.copyOf(values));
  }

  /** Within the limits, themselves rounded to what a person can set. */
  private double held(double number) {
    double fine = Math.abs(limits.high()) * FINEST;
    if (number > limits.high()) {
      return rounded(RoundNumber::below, limits.high(), fine);
    }
    return number < limits.low()
        ? rounded(RoundNumber::above, limits.low(), limits.low() * FINEST)
        : number;
  }

  /** A speed in the unit of whoever sets it, so that the sheet has what the machine is told. */
  private double rounded(DoubleBinaryOperator round, double canonical, double most) {
    if (setting != Setting.SPEED) {
      return round.applyAsDouble(canonical, most);
    }
    double shown = QuantityPrinter.value(canonical, kind, reader);
    return QuantityPrinter.canonical(
        round.applyAsDouble(shown, most * shown / canonical), kind, reader);
  }

  /** 1, 2, 4, 8 … */
  Axis doubled(int count) {
    List<Object> values = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      values.add(value(Math.pow(2, i)));
    }
    return new Axis(setting, values);
  }
}
