package club.emberwell.web.report;

import club.emberwell.report.reading.WorkProperty;
import club.emberwell.report.reading.WrittenReport;
import club.emberwell.report.reading.WrittenTrial;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Stream;

/** An entry in its author's words, back as the values of form fields. */
final class ReportFormValues {
  private final Map<String, String> values = new LinkedHashMap<>();

  private ReportFormValues() {}

  /** Everything, for an edit. */
  static Map<String, String> all(WrittenReport written) {
    ReportFormValues form = new ReportFormValues();
    form.work(written);
    form.trial(written.trials().get(0), true);
    return form.values;
  }

  /** What a next report of the same person likely has in common; never the judgement. */
  static Map<String, String> likely(WrittenReport written) {
    ReportFormValues form = new ReportFormValues();
    form.work(written);
    form.trial(written.trials().get(0), false);
    Stream.of(WorkProperty.values())
        .filter(property -> property.form().isOnce())
        .forEach(property -> form.values.remove(property.code()));
    return form.values;
  }

  private void work(WrittenReport w) {
    put("machine", w.machine());
    WorkFields.fill(values, w.work());
  }

  private void trial(WrittenTrial trial, boolean judged) {
    SettingFields.fill(values, trial.settings());
    if (judged) {
      put("effect", trial.effect() == null ? null : trial.effect().strip().replace(' ', '-'));
      put("quality", trial.quality());
      put("defects", trial.defects() == null ? null : String.join(", ", trial.defects()));
    }
  }

  private void put(String name, Object value) {
    if (value != null) {
      values.put(name, value.toString());
    }
  }
}
