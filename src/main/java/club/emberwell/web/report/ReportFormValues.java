package club.emberwell.web.report;

import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.report.StoredReport;
import club.emberwell.report.reading.WorkProperty;
import club.emberwell.report.reading.WrittenReport;
import club.emberwell.report.reading.WrittenTrial;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import java.util.stream.Stream;

/** An entry in its author's words, back as the values of form fields. */
public final class ReportFormValues {
  private final Map<String, String> values = new LinkedHashMap<>();

  private ReportFormValues() {}

  /** Everything, for an edit. */
  static Map<String, String> all(StoredReport report) {
    ReportFormValues form = new ReportFormValues();
    form.work(report.written(), report.remarks());
    form.trial(report.written().trials().get(0), true);
    return form.values;
  }

  /** What a next report of the same person likely has in common; never the judgement. */
  static Map<String, String> likely(StoredReport report) {
    return without(report, 0, property -> property.form().isOnce());
  }

  /**
   * What somebody who tried a report again has in common with it.
   *
   * @param trial which of its trials; another than it has = the first
   */
  public static Map<String, String> repeated(StoredReport report, int trial) {
    Map<String, String> values =
        without(report, trial, property -> property.value().shape().isFree());
    values.remove("machine");
    return values;
  }

  private static Map<String, String> without(
      StoredReport report, int trial, Predicate<WorkProperty> left) {
    return without(report.written(), report.remarks(), trial, left);
  }

  /**
   * What settings that are kept have in common with a report.
   *
   * @param remarks of reading it
   * @param left what is not taken over
   */
  public static Map<String, String> without(
      WrittenReport written, List<Remark> remarks, int trial, Predicate<WorkProperty> left) {
    ReportFormValues form = new ReportFormValues();
    form.work(written, remarks);
    List<WrittenTrial> trials = written.trials();
    form.trial(trials.get(trial >= 0 && trial < trials.size() ? trial : 0), false);
    form.assumedUnits(remarks);
    Stream.of(WorkProperty.values())
        .filter(left)
        .forEach(property -> form.values.remove(property.code()));
    return form.values;
  }

  /** A number whose unit was clear by itself brings it along, where it stands beside the field. */
  private void assumedUnits(List<Remark> remarks) {
    remarks.stream()
        .filter(remark -> remark.is(RemarkId.UNIT_ASSUMED))
        .forEach(
            remark ->
                remark.readings().stream()
                    .findFirst()
                    .ifPresent(
                        text ->
                            values.computeIfPresent(
                                remark.field().substring(1).replace('/', '.'), (n, v) -> text)));
  }

  private void work(WrittenReport written, List<Remark> remarks) {
    put("machine", written.machine());
    // as it was typed, though with the material
    remarks.stream()
        .filter(remark -> remark.is(RemarkId.THICKNESS_READ))
        .flatMap(remark -> remark.readings().stream())
        .forEach(text -> put(WorkProperty.THICKNESS.code(), text));
    WorkFields.fill(values, written.work());
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
