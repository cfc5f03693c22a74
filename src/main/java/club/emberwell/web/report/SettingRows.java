package club.emberwell.web.report;

import club.emberwell.laser.Settings;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.quantity.QuantityPrinter;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.quantity.WrittenQuantity;
import club.emberwell.report.StoredReport;
import club.emberwell.report.WrittenSettings;
import club.emberwell.web.report.ReportPage.Row;
import java.util.ArrayList;
import java.util.List;

/** Each setting as its author wrote it beside what was understood, in the reader's units. */
final class SettingRows {
  private final UnitPreferences reader;
  private final List<Row> rows = new ArrayList<>();

  private SettingRows(UnitPreferences reader) {
    this.reader = reader;
  }

  static List<Row> of(StoredReport report, UnitPreferences reader) {
    SettingRows table = new SettingRows(reader);
    WrittenSettings w = report.written().trials().get(0).settings();
    Settings s = report.snapshot().trials().get(0).settings();
    if (s.powerPercent() != null) {
      table.add("Power", w.power(), s.powerPercent(), QuantityKind.POWER_PERCENT);
    } else {
      table.add("Power", w.power(), s.powerW(), QuantityKind.POWER);
    }
    table.add("Speed", w.speed(), s.speedMmS(), QuantityKind.SPEED);
    table.add("Line spacing", w.lineSpacing(), s.lineSpacingMm(), QuantityKind.LINE_SPACING);
    table.plain("Passes", s.passes());
    table.add(
        "Pulse repetition rate",
        w.repetitionRate(),
        s.repetitionRateKhz(),
        QuantityKind.REPETITION_RATE);
    table.add(
        "Pulse duration", w.pulseDuration(), s.pulseDurationNs(), QuantityKind.PULSE_DURATION);
    table.add("Focus offset", w.focusOffset(), s.focusOffsetMm(), QuantityKind.FOCUS_OFFSET);
    table.plain("Air assist", s.airAssist() == null ? null : s.airAssist() ? "on" : "off");
    table.plain("Direction", s.direction() == null ? null : s.direction().label());
    table.plain("Second fill across", s.crossPass() == null ? null : s.crossPass() ? "yes" : "no");
    return table.rows;
  }

  private void add(String label, WrittenQuantity written, Double value, QuantityKind dimension) {
    if (value != null) {
      rows.add(new Row(label, text(written), QuantityPrinter.print(value, dimension, reader)));
    }
  }

  private void plain(String label, Object value) {
    if (value != null) {
      rows.add(new Row(label, value.toString(), ""));
    }
  }

  private static String text(WrittenQuantity written) {
    if (written == null) {
      return "";
    }
    return written.text() != null
        ? written.text()
        : written.value().toPlainString() + " " + written.unit();
  }
}
