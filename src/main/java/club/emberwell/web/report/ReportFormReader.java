package club.emberwell.web.report;

import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.report.reading.WrittenReport;
import club.emberwell.report.reading.WrittenTrial;
import club.emberwell.web.frame.SentForm;
import java.util.List;
import java.util.UUID;

/** What a sent form says, as an entry in its author's own words. */
final class ReportFormReader {
  private ReportFormReader() {}

  static WrittenReport written(SentForm form, UUID repeatOf) {
    WrittenTrial trial =
        new WrittenTrial(
            null,
            null,
            SettingFields.written(form),
            form.text("effect"),
            form.number("quality"),
            defects(form));
    return new WrittenReport(
        machine(form), null, WorkFields.written(form), List.of(trial), repeatOf, form.confirmed());
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
