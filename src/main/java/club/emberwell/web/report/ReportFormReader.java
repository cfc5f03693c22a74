package club.emberwell.web.report;

import club.emberwell.laser.Process;
import club.emberwell.laser.Setting;
import club.emberwell.laser.SettingValue;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.report.reading.WorkProperty;
import club.emberwell.report.reading.WorkValue;
import club.emberwell.report.reading.WrittenReport;
import club.emberwell.report.reading.WrittenSettings;
import club.emberwell.report.reading.WrittenTrial;
import club.emberwell.report.reading.WrittenWork;
import club.emberwell.web.frame.SentForm;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** What a sent form says, as an entry in its author's own words. */
public final class ReportFormReader {
  private ReportFormReader() {}

  /**
   * @param style in which the member writes numbers
   */
  public static WrittenReport written(SentForm form, UUID repeatOf, NumberStyle style) {
    WrittenTrial trial =
        new WrittenTrial(
            null,
            null,
            settings(form, style),
            form.text("effect"),
            form.number("quality"),
            defects(form));
    return new WrittenReport(
        machine(form), null, work(form, style), List.of(trial), repeatOf, form.confirmed());
  }

  /** What says nothing about such work is not sent on, though it may stand in a field unseen. */
  private static WrittenSettings settings(SentForm form, NumberStyle style) {
    WrittenSettings written = SettingFields.written(form);
    Optional<Process> process = Process.of(form.text("process"));
    for (Setting setting : Setting.values()) {
      if (process.filter(done -> !setting.appliesTo(done)).isPresent()) {
        written = written.with(setting, null);
      } else if (setting.value().shape() == SettingValue.Shape.QUANTITY) {
        String name = SettingFields.name(setting);
        written = written.with(setting, UnitFields.sent(form, name, style));
      }
    }
    return written;
  }

  private static WrittenWork work(SentForm form, NumberStyle style) {
    WrittenWork written = WorkFields.written(form);
    for (WorkProperty property : WorkProperty.of(WorkValue.Shape.QUANTITY)) {
      written = written.with(property, UnitFields.sent(form, property.code(), style));
    }
    return written;
  }

  private static UUID machine(SentForm form) {
    String text = form.text("machine");
    if (text == null) {
      return null;
    }
    try {
      return UUID.fromString(text);
    } catch (IllegalArgumentException e) {
      form.remarks()
          .add(Remark.error(RemarkId.MACHINE_UNKNOWN, "/machine", "Choose one of your machines."));
      return null;
    }
  }

  private static List<String> defects(SentForm form) {
    String text = form.text("defects");
    return text == null
        ? List.of()
        : List.of(text.split("\\s*,\\s*")).stream().filter(d -> !d.isBlank()).toList();
  }
}
