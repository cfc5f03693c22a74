package club.emberwell.web.report;

import club.emberwell.laser.Amount;
import club.emberwell.laser.Setting;
import club.emberwell.laser.SettingValue.Choice;
import club.emberwell.laser.Settings;
import club.emberwell.quantity.QuantityPrinter;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.remark.Remark;
import club.emberwell.report.StoredReport;
import club.emberwell.report.reading.WrittenSettings;
import club.emberwell.web.frame.SentForm;
import club.emberwell.web.report.ReportPage.Row;
import java.util.ArrayList;
import java.util.List;

/** Each setting as its author wrote it beside what was understood, in the reader's units. */
public final class SettingRows {
  private SettingRows() {}

  static List<Row> of(StoredReport report, UnitPreferences reader) {
    return of(
        report.written().trials().get(0).settings(),
        report.snapshot().trials().get(0).settings(),
        reader);
  }

  /** The same of settings by themselves. */
  public static List<Row> of(WrittenSettings written, Settings settings, UnitPreferences reader) {
    List<Row> rows = new ArrayList<>();
    settings.values().forEach((setting, value) -> rows.add(row(setting, value, written, reader)));
    return rows;
  }

  private static Row row(
      Setting setting, Object value, WrittenSettings written, UnitPreferences reader) {
    if (value instanceof Amount amount) {
      return new Row(
          setting.label(),
          SentForm.typed(written.quantity(setting)),
          QuantityPrinter.print(amount.number(), amount.kind(), reader));
    }
    String words = setting.value().choice(value).map(Choice::label).orElse(value.toString());
    return new Row(setting.label(), words, "");
  }

  /** The readers of single values do not know where they stand: the setting is put before. */
  public static String noticed(Remark remark) {
    if (!remark.tellsReading()) {
      return remark.detail();
    }
    String last = remark.field().substring(remark.field().lastIndexOf('/') + 1);
    return Setting.of(last)
        .map(setting -> setting.label() + ": " + remark.detail())
        .orElse(remark.detail());
  }
}
