package club.emberwell.report.reading;

import club.emberwell.bench.FieldReader;
import club.emberwell.bench.MachineReader;
import club.emberwell.laser.Process;
import club.emberwell.quantity.WrittenQuantity;
import club.emberwell.remark.Remark;
import club.emberwell.report.reading.WorkValue.Shape;

/** What was done, and what was said of the work but for the words of the vocabularies. */
final class WorkStep implements ReportInterpreter.Step {
  @Override
  public void read(Draft draft) {
    WrittenWork written = draft.written.work();
    FieldReader in = draft.in;
    draft.work =
        Work.of(
            in.choice(
                "/process",
                in.required("/process", written.process()),
                Process::of,
                Process.values(),
                Process::code));
    for (WorkProperty property : WorkProperty.values()) {
      boolean wanted = property.form().isMissedAt(draft.work.process());
      if (property.value().shape() != Shape.WORD) {
        Object value = value(in, property, written);
        if (property == WorkProperty.THICKNESS && wanted) {
          value = ThicknessInWords.of(in, written, (Double) value);
        }
        draft.work = draft.work.with(property, value);
        needed(in, property, written);
      }
      if (wanted && isAbsent(written.of(property)) && draft.work.isSilentOf(property)) {
        WorkForm.Missed missed = property.form().missed();
        in.add(Remark.warning(missed.id(), "/" + property.code(), missed.words()));
      }
    }
    MachineReader.confirmed(in, draft.written.confirmed());
  }

  private static Object value(FieldReader in, WorkProperty property, WrittenWork written) {
    String at = "/" + property.code();
    WorkValue value = property.value();
    return switch (value.shape()) {
      case QUANTITY -> in.quantity(at, value.kind(), written.quantity(property), value.bounds());
      case TEXT -> in.text(at, written.text(property), value.longest(), false);
      case LINES -> in.text(at, written.text(property), value.longest(), true);
      case WORD -> throw new IllegalArgumentException(property + " is read from its vocabulary");
    };
  }

  static void needed(FieldReader in, WorkProperty property, WrittenWork written) {
    if (property.form().isNeeded()) {
      in.required("/" + property.code(), written.of(property));
    }
  }

  private static boolean isAbsent(Object given) {
    return given instanceof String text
        ? text.isBlank()
        : FieldReader.isAbsent((WrittenQuantity) given);
  }
}
