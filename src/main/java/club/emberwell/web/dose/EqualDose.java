package club.emberwell.web.dose;

import club.emberwell.bench.FieldReader;
import club.emberwell.laser.DoseKind;
import club.emberwell.laser.Laser;
import club.emberwell.laser.Setting;
import club.emberwell.laser.Settings;
import club.emberwell.laser.dose.Dose;
import club.emberwell.laser.dose.IsoDose;
import club.emberwell.laser.dose.Settable;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.quantity.QuantityPrinter;
import club.emberwell.quantity.RoundNumber;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.quantity.WrittenQuantity;
import club.emberwell.remark.Remark;
import club.emberwell.report.reading.DoseCalculator.Answer;
import club.emberwell.report.reading.SettingsReader;
import club.emberwell.report.reading.WrittenSettings;
import club.emberwell.web.frame.SentForm;
import java.util.List;

/**
 * Speeds of the same nominal dose.
 *
 * @param dose that is kept
 * @param power the other power, as wanted
 * @param spacing the other line spacing, or null for line work
 * @param speed that gives the dose with them, as it can be set in the reader's unit
 * @param line one row for every step of power
 */
record EqualDose(String dose, String power, String spacing, Speed speed, List<Row> line) {
  private static final int STEPS_SHOWN = 20;
  private static final int DOSE_DIGITS = 3;

  /**
   * A speed that can be set.
   *
   * @param gives the dose it gives
   */
  record Speed(String value, String gives) {}

  /** A power with the speed of equal dose. */
  record Row(String percent, String power, Speed speed) {}

  /** What was wanted instead, as read; values at fault are null. */
  record Wanted(Settings settings, List<Remark> remarks) {
    boolean readable() {
      return remarks.stream().noneMatch(Remark::isError);
    }
  }

  /** Reads the other power and spacing; what is left open is as in the settings. */
  static Wanted wanted(SentForm sent, NumberStyle style) {
    FieldReader in = new FieldReader(style);
    WrittenSettings written =
        WrittenSettings.NONE
            .with(Setting.POWER, or(sent.quantity("other.power"), sent.quantity("settings.power")))
            .with(Setting.SPEED, sent.quantity("settings.speed"))
            .with(
                Setting.LINE_SPACING,
                or(sent.quantity("other.lineSpacing"), sent.quantity("settings.lineSpacing")));
    Settings read = SettingsReader.read(in, "/other", written, null);
    List<Remark> own =
        in.remarks().stream()
            .filter(
                r ->
                    r.field().equals("/other/power") && sent.text("other.power") != null
                        || r.field().equals("/other/lineSpacing")
                            && sent.text("other.lineSpacing") != null)
            .toList();
    return new Wanted(read, own);
  }

  private static WrittenQuantity or(WrittenQuantity first, WrittenQuantity second) {
    return first == null ? second : first;
  }

  /** Null where there is no dose to keep. */
  static EqualDose of(Answer answer, Settings other, UnitPreferences reader) {
    DoseKind kind = answer.process().doseKind();
    boolean area = kind == DoseKind.AREAL;
    Double dose = answer.derived().dose(kind);
    Double power = Dose.derive(answer.laser(), answer.process(), other).averagePowerW();
    Double spacing = area ? other.lineSpacingMm() : Double.valueOf(1);
    Double runs = Dose.runs(answer.process(), answer.settings());
    if (dose == null || dose == 0 || power == null || spacing == null || runs == null) {
      return null;
    }
    double speed = IsoDose.speedFor(kind, dose, power, spacing, runs);
    return new EqualDose(
        QuantityPrinter.print(dose, kind.quantity(), reader),
        QuantityPrinter.print(power, QuantityKind.POWER, reader),
        area ? QuantityPrinter.print(spacing, QuantityKind.LINE_SPACING, reader) : null,
        speed(answer.laser(), kind, dose, speed, reader),
        line(answer.laser(), kind, dose, spacing, runs, reader));
  }

  private static Speed speed(
      Laser laser, DoseKind kind, double dose, double exact, UnitPreferences to) {
    double set = Settable.speed(exact, laser.maxSpeedMmS(), to);
    return new Speed(
        QuantityPrinter.print(set, QuantityKind.SPEED, to),
        figures(dose * exact / set, kind.quantity(), to));
  }

  private static String figures(double canonical, QuantityKind kind, UnitPreferences to) {
    double shown = QuantityPrinter.value(canonical, kind, to);
    return QuantityPrinter.number(RoundNumber.significant(shown, DOSE_DIGITS), to.style())
        + " "
        + QuantityPrinter.unitLabel(kind, to);
  }

  private static List<Row> line(
      Laser laser, DoseKind kind, double dose, double spacing, double runs, UnitPreferences to) {
    return IsoDose.line(laser, kind, dose, spacing, runs).stream()
        .limit(STEPS_SHOWN)
        .map(
            point ->
                new Row(
                    QuantityPrinter.print(point.powerPercent(), QuantityKind.POWER_PERCENT, to),
                    QuantityPrinter.print(point.powerW(), QuantityKind.POWER, to),
                    speed(laser, kind, dose, point.speedMmS(), to)))
        .toList();
  }
}
