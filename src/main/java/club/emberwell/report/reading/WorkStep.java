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
      if (property.value().shape() != Shape.WORD) {
        draft.work = draft.work.with(property, value(in, property, written));
        needed(in, property, written);
      }
      missed(in, property, draft.work.process(), written);
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

  private static void missed(
      FieldReader in, WorkProperty property, Process process, WrittenWork written) {
    WorkForm.Missed missed = property.form().missed();
    if (missed != null && missed.at() == process && isAbsent(written.of(property))) {
      in.add(Remark.warning(missed.id(), "/" + property.code(), missed.words()));
    }
  }

  private static boolean isAbsent(Object given) {
    return given instanceof String text
        ? text.isBlank()
        : FieldReader.isAbsent((WrittenQuantity) given);
  }
}
