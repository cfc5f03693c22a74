package club.emberwell.laser.dose;

import static club.emberwell.laser.dose.PlausibilityRules.Band.band;

import club.emberwell.laser.DoseKind;
import club.emberwell.laser.LaserSource;
import club.emberwell.laser.Motion;
import club.emberwell.laser.Regime;
import club.emberwell.laser.Setting;
import club.emberwell.laser.SettingValue;
import club.emberwell.laser.dose.Plausibility.Rule;
import club.emberwell.laser.dose.Plausibility.Trial;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.remark.Severity;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Stream;

/**
 * The rules and every bound of {@link Plausibility}, in one place. Bounds from memory unless said
 * otherwise; published trials lie inside them (tested).
 */
final class PlausibilityRules {
  /** An inclusive interval with its unit. */
  record Band(double low, double high, String unit) {
    static Band band(double low, double high, String unit) {
      return new Band(low, high, unit);
    }

    boolean hold(double value) {
      return value >= low && value <= high;
    }

    @Override
    public String toString() {
      return number(low) + " to " + number(high) + " " + unit;
    }
  }

  /** What a slipped value may have been: as one would type it, and in the canonical unit. */
  private record Other(String written, double canonical) {}

  static final Band SPEED = band(0.1, 15_000, "mm/s");
  static final Band GANTRY_SPEED = band(0, 1500, "mm/s");
  static final Band SPACING = band(0.003, 1, "mm");
  static final Band AREAL_DOSE = band(0.001, 500, "J/mm2");

  /** Common practice, no source. */
  static final Band LINE_DOSE = band(0.0001, 2000, "J/mm");

  static final Band POWER = band(0, 6000, "W");
  static final Band RATE = band(0, 10_000, "kHz");

  /** Nanosecond marking sources; from the lowest rate of those that set their duration. */
  static final Band NANOSECOND_RATE = band(1, 4000, "kHz");

  static final Band PEAK_FLUENCE = band(0.01, 300, "J/cm2");
  static final Band NANOSECOND_ENERGY = band(0, 2, "mJ");
  static final Band DIODE_RATED = band(0, 40, "W");

  /** Share of the rated power that a meter or a label may be off. */
  static final double ABOVE_RATED = 1.05;

  /** Area work on a gantry below this is more often mm/s typed as mm/min; no source. */
  static final double SLOW_FILL_MM_S = 3;

  private static final String AT_POWER = "/settings/power";
  private static final String AT_SPEED = "/settings/speed";
  private static final String AT_RATE = "/settings/repetitionRate";
  private static final String AT_DURATION = "/settings/pulseDuration";

  static final List<Rule> ALL =
      List.of(
          t -> t.laser().source().plausible(t.laser().wavelengthNm()),
          when(
              RemarkId.RATED_POWER_ELECTRICAL,
              "/laser/ratedPower",
              t ->
                  t.laser().source() == LaserSource.DIODE
                      && !DIODE_RATED.hold(t.laser().ratedPowerW()),
              t -> "Diode sources usually give up to 40 W of light; is this the electrical power?"),
          outside(RemarkId.POWER_OUT_OF_RANGE, AT_POWER, POWER, t -> t.derived().averagePowerW()),
          when(
              RemarkId.POWER_ABOVE_RATED,
              AT_POWER,
              t ->
                  over(t.settings().powerW(), t.laser().ratedPowerW() * ABOVE_RATED)
                      && t.laser().ratedPowerW() > 0,
              t ->
                  number(t.settings().powerW())
                      + " W is more than the rated "
                      + number(t.laser().ratedPowerW())
                      + " W."),
          when(
              RemarkId.POWER_PERCENT_ABOVE_100,
              AT_POWER,
              t -> over(t.settings().powerPercent(), 100),
              t -> number(t.settings().powerPercent()) + " % is more than the rated power."),
          PlausibilityRules::speed,
          when(
              RemarkId.SPEED_ABOVE_MACHINE,
              AT_SPEED,
              t ->
                  t.laser().maxSpeedMmS() != null
                      && over(t.settings().speedMmS(), t.laser().maxSpeedMmS()),
              t ->
                  number(t.settings().speedMmS())
                      + " mm/s is more than the machine's highest speed of "
                      + number(t.laser().maxSpeedMmS())
                      + " mm/s."),
          PlausibilityRules::spacing,
          outside(
              RemarkId.AREAL_DOSE_OUT_OF_RANGE,
              "/settings",
              AREAL_DOSE,
              t -> t.derived().arealDose()),
          outside(
              RemarkId.LINE_DOSE_OUT_OF_RANGE, "/settings", LINE_DOSE, t -> t.derived().lineDose()),
          PlausibilityRules::rate,
          when(
              RemarkId.REPETITION_RATE_ON_CW,
              AT_RATE,
              t ->
                  t.regime() == Regime.CW
                      && !t.laser().gated()
                      && t.settings().repetitionRateKhz() != null,
              t ->
                  t.laser().source() == LaserSource.CO2
                      ? "A continuous CO2 tube has no frequency. If its power is pulsed (PWM), enter that at the machine."
                      : "A continuous laser has no frequency. If its power is pulsed (PWM), enter that at the machine."),
          PlausibilityRules::regime,
          when(
              RemarkId.PULSE_LONGER_THAN_PERIOD,
              AT_DURATION,
              t ->
                  t.settings().pulseDurationNs() != null
                      && t.settings().repetitionRateKhz() != null
                      && t.settings().pulseDurationNs() * t.settings().repetitionRateKhz() > 1e6,
              t -> "At this frequency the next pulse starts before this one has ended."),
          when(
              RemarkId.PULSE_ENERGY_HIGH,
              AT_RATE,
              t -> t.nanosecond() && over(t.derived().pulseEnergyMj(), NANOSECOND_ENERGY.high()),
              t ->
                  number(t.derived().pulseEnergyMj())
                      + " mJ a pulse follow from power and frequency; nanosecond marking sources"
                      + " usually stay below 2 mJ."),
          outside(
              RemarkId.PEAK_FLUENCE_OUT_OF_RANGE,
              "/settings",
              PEAK_FLUENCE,
              t -> t.derived().peakFluence()));

  /** The settings of which a simple bound is known; named after them. */
  static final List<Rule> USUAL =
      Stream.of(Setting.values())
          .filter(setting -> setting.value().usual() != null)
          .map(PlausibilityRules::usual)
          .toList();

  private static Rule usual(Setting setting) {
    SettingValue.Usual usual = setting.value().usual();
    return outside(
        usual.id(),
        "/settings/" + setting.code(),
        band(usual.bounds().min(), usual.bounds().max(), usual.unit()),
        t -> t.settings().number(setting));
  }

  private PlausibilityRules() {}

  private static Optional<Remark> speed(Trial t) {
    Double v = t.settings().speedMmS();
    if (v == null) {
      return Optional.empty();
    }
    boolean gantry = t.laser().motion() == Motion.GANTRY;
    Band usual = gantry ? GANTRY_SPEED : SPEED;
    if (v > usual.high()) {
      RemarkId id =
          gantry && SPEED.hold(v) ? RemarkId.SPEED_UNLIKE_MOTION : RemarkId.SPEED_OUT_OF_RANGE;
      return Optional.of(slip(id, AT_SPEED, v, usual, "mm/s", tooFast(v)));
    }
    if (!SPEED.hold(v)) {
      return Optional.of(slip(RemarkId.SPEED_OUT_OF_RANGE, AT_SPEED, v, SPEED, "mm/s", tooSlow(v)));
    }
    boolean fill = t.process().doseKind() == DoseKind.AREAL;
    return gantry && fill && v < SLOW_FILL_MM_S
        ? Optional.of(
            slip(
                RemarkId.SPEED_SLOW_FOR_FILL,
                AT_SPEED,
                v,
                band(SLOW_FILL_MM_S, GANTRY_SPEED.high(), "mm/s"),
                "mm/s",
                tooSlow(v)))
        : Optional.empty();
  }

  /** Speeds typed 60 or 25.4 times too high. */
  private static List<Other> tooFast(double v) {
    return List.of(
        new Other(number(v) + " mm/min", v / 60), new Other(number(v / 25.4) + " mm/s", v / 25.4));
  }

  /** Speeds typed 60 or 25.4 times too low. */
  private static List<Other> tooSlow(double v) {
    return List.of(
        new Other(number(v * 60) + " mm/s", v * 60), new Other(number(v) + " in/s", v * 25.4));
  }

  private static Optional<Remark> spacing(Trial t) {
    Double h = t.settings().lineSpacingMm();
    if (h == null || SPACING.hold(h)) {
      return Optional.empty();
    }
    double other = h > SPACING.high() ? h / 25.4 : h * 25.4;
    return Optional.of(
        slip(
            RemarkId.LINE_SPACING_OUT_OF_RANGE,
            "/settings/lineSpacing",
            h,
            SPACING,
            "mm",
            List.of(new Other(number(other) + " mm", other))));
  }

  private static Optional<Remark> rate(Trial t) {
    Double f = t.settings().repetitionRateKhz();
    Band usual = t.nanosecond() ? NANOSECOND_RATE : RATE;
    // femtosecond sources run faster than any other
    if (f == null || usual.hold(f) || t.regime() == Regime.FS) {
      return Optional.empty();
    }
    double other = f > usual.high() ? f / 1000 : f * 1000;
    return Optional.of(
        slip(
            RemarkId.REPETITION_RATE_OUT_OF_RANGE,
            AT_RATE,
            f,
            usual,
            "kHz",
            List.of(new Other(number(other) + " kHz", other))));
  }

  private static Optional<Remark> regime(Trial t) {
    Double ns = Dose.positive(t.settings().pulseDurationNs());
    if (ns == null || t.regime() == null) {
      return Optional.empty();
    }
    Regime pulse = Regime.ofPulseDuration(ns);
    boolean gate = t.regime() == Regime.CW && t.laser().gated() && pulse == Regime.LONG;
    if (pulse == t.regime() || gate) {
      return Optional.empty();
    }
    return Optional.of(
        Remark.warning(
            RemarkId.REGIME_UNLIKE_DURATION,
            AT_DURATION,
            "A pulse of "
                + number(ns)
                + " ns is "
                + pulse.label()
                + " work; the machine is entered as "
                + t.regime().label()
                + "."));
  }

  /** A value outside its usual band that another unit would put inside. */
  private static Remark slip(
      RemarkId id, String field, double value, Band usual, String unit, List<Other> others) {
    List<String> readings = new ArrayList<>();
    for (Other other : others) {
      if (usual.hold(other.canonical())) {
        readings.add(other.written());
      }
    }
    String detail = number(value) + " " + unit + " is outside the usual " + usual + ".";
    if (!readings.isEmpty()) {
      detail += " A slip of the unit? Did you mean " + String.join(" or ", readings) + "?";
    }
    return new Remark(id, Severity.WARNING, field, detail, readings);
  }

  private static Rule outside(
      RemarkId id, String field, Band usual, Function<Trial, Double> reader) {
    return t -> {
      Double value = reader.apply(t);
      return value == null || usual.hold(value)
          ? Optional.empty()
          : Optional.of(
              Remark.warning(
                  id,
                  field,
                  number(value) + " " + usual.unit() + " is outside the usual " + usual + "."));
    };
  }

  private static Rule when(
      RemarkId id, String field, Predicate<Trial> unusual, Function<Trial, String> detail) {
    return t ->
        unusual.test(t)
            ? Optional.of(Remark.warning(id, field, detail.apply(t)))
            : Optional.empty();
  }

  private static boolean over(Double value, double limit) {
    return value != null && value > limit;
  }

  /** At most six digits, without exponent or trailing zeros. */
  private static String number(double value) {
    if (!Double.isFinite(value)) {
      return String.valueOf(value);
    }
    BigDecimal rounded = new BigDecimal(value).round(new MathContext(6)).stripTrailingZeros();
    return rounded.toPlainString();
  }
}
