package club.emberwell.web.report;

import club.emberwell.quantity.WrittenQuantity;
import club.emberwell.report.reading.WrittenReport;
import club.emberwell.report.reading.WrittenTrial;
import club.emberwell.web.frame.SentForm;
import java.util.LinkedHashMap;
import java.util.Map;

/** An entry in its author's words, back as the values of form fields. */
final class ReportFormValues {
  private final Map<String, String> values = new LinkedHashMap<>();

  private ReportFormValues() {}

  /** Everything, for an edit. */
  static Map<String, String> all(WrittenReport written) {
    ReportFormValues form = new ReportFormValues();
    form.work(written);
    form.trial(written.trials().get(0), true);
    form.put("notes", written.particulars().notes());
    form.put("lot", written.particulars().lot());
    form.put("controllerVersion", written.particulars().controllerVersion());
    return form.values;
  }

  /** What a next report of the same person likely has in common; never the judgement. */
  static Map<String, String> likely(WrittenReport written) {
    ReportFormValues form = new ReportFormValues();
    form.work(written);
    form.trial(written.trials().get(0), false);
    form.put("controllerVersion", written.particulars().controllerVersion());
    return form.values;
  }

  private void work(WrittenReport w) {
    put("machine", w.machine());
    put("material", w.work().material());
    put("coating", w.work().coating());
    put("colour", w.work().colour());
    put("thickness", w.work().thickness());
    put(
        "process",
        w.work().process() == null ? null : w.work().process().strip().replace(' ', '-'));
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
    if (value instanceof WrittenQuantity quantity) {
      values.put(name, SentForm.typed(quantity));
    } else if (value != null) {
      values.put(name, value.toString());
    }
  }
}
