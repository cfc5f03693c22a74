package club.emberwell.laser;

import static club.emberwell.laser.SettingForm.main;
import static club.emberwell.laser.SettingForm.more;
import static club.emberwell.laser.SettingForm.pulses;
import static club.emberwell.laser.SettingValue.choice;
import static club.emberwell.laser.SettingValue.count;
import static club.emberwell.laser.SettingValue.either;
import static club.emberwell.laser.SettingValue.flag;
import static club.emberwell.laser.SettingValue.quantity;

import club.emberwell.laser.SettingForm.Applies;
import club.emberwell.laser.SettingValue.Basis;
import club.emberwell.laser.SettingValue.Choice;
import club.emberwell.quantity.Bounds;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.remark.Coded;
import club.emberwell.remark.RemarkId;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * All the program knows of each thing a laser is told: reading, forms, pages, JSON, the index,
 * limits and ranges go over these. The order is the one in which people set and read them.
 */
public enum Setting implements Coded {
  POWER(
      "power",
      "Power",
      either(
              new Basis("powerPercent", QuantityKind.POWER_PERCENT, new Bounds(0.001, 100)),
              new Basis("powerW", QuantityKind.POWER, new Bounds(0.000_001, 100_000)))
          .searchable(),
      main("45 % or 9 W").needed()),
  SPEED(
      "speed",
      "Speed",
      quantity(QuantityKind.SPEED, 0.000_1, 1_000_000).searchable(),
      main("3000 mm/min, 50 mm/s, 12 in/s").needed()),
  LINE_SPACING(
      "lineSpacing",
      "Line spacing",
      quantity(QuantityKind.LINE_SPACING, 0.000_01, 100).searchable(),
      main("0.1 mm, 254 dpi; also called interval, hatch or DPI").ofAreaWork()),
  PASSES(
      "passes",
      "Passes",
      count(1, 10_000).usual(RemarkId.PASSES_OUT_OF_RANGE, 1, 500, "passes"),
      main(null)),
  REPETITION_RATE(
      "repetitionRate",
      "Frequency",
      quantity(QuantityKind.REPETITION_RATE, 0.000_001, 1_000_000_000).searchable(),
      pulses("30 kHz; also called pulse repetition rate")),
  PULSE_DURATION(
      "pulseDuration",
      "Pulse duration",
      quantity(QuantityKind.PULSE_DURATION, 0.000_001, 10_000_000_000d)
          .usual(RemarkId.PULSE_DURATION_OUT_OF_RANGE, 0.0001, 1_000_000, "ns")
          .searchable(),
      pulses("200 ns; also called pulse width")),
  FOCUS_OFFSET(
      "focusOffset",
      "Focus offset",
      quantity(QuantityKind.FOCUS_OFFSET, -1000, 1000)
          .usual(RemarkId.FOCUS_OFFSET_OUT_OF_RANGE, -50, 50, "mm"),
      more("+2 mm = focus above the work, -1 mm = into it; also called defocus").notInLine()),
  SCAN_ANGLE(
      "scanAngle",
      "Scan angle",
      quantity(QuantityKind.ANGLE, -360, 360).searchable(),
      more("45 °; 0 = lines along x").ofAreaWork()),
  AIR_ASSIST(
      "airAssist",
      "Air assist",
      flag(new Choice("true", "on", "air assist"), new Choice("false", "off", "no air assist")),
      more(null)),
  DIRECTION(
      "direction",
      "Direction",
      choice(
          Stream.of(Direction.values()).map(d -> new Choice(d.code(), d.label(), null)).toList()),
      more(null).asking("Direction of the lines").ofAreaWork()),
  CROSS_PASS(
      "crossPass",
      "Cross-hatch",
      flag(new Choice("true", "yes", "cross-hatch"), new Choice("false", "no", null)),
      more(null).asking("Cross-hatch (second fill)").ofAreaWork());

  private final String code;
  private final String label;
  private final SettingValue value;
  private final SettingForm form;

  Setting(String code, String label, SettingValue value, SettingForm form) {
    this.code = code;
    this.label = label;
    this.value = value;
    this.form = form;
  }

  /** Its word in the API and in forms. */
  @Override
  public String code() {
    return code;
  }

  /** Its name on pages. */
  public String label() {
    return label;
  }

  /** What may be given. */
  public SettingValue value() {
    return value;
  }

  /** How a member is asked for it. */
  public SettingForm form() {
    return form;
  }

  /** The question on the form where the label does not suffice. */
  public String question() {
    return form.question() == null ? label : form.question();
  }

  /** Whether it says anything about such work; forms ask for it and plans vary it only then. */
  public boolean appliesTo(Process process) {
    return form.applies() != Applies.TO_AREA_WORK || process.doseKind() == DoseKind.AREAL;
  }

  /** Whether such a laser is told it at all: a beam that never stops has no pulses. */
  public boolean appliesTo(Laser laser) {
    return form.applies() != Applies.TO_PULSED_LASERS || laser.regime().pulsed() || laser.gated();
  }

  /** The settings of a group of the form, in their order. */
  public static List<Setting> of(SettingForm.Group group) {
    return Stream.of(values()).filter(setting -> setting.form.group() == group).toList();
  }

  /** The setting with exactly this code. */
  public static Optional<Setting> of(String code) {
    return Coded.of(Setting.class, code);
  }
}
