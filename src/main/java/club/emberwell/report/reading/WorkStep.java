package club.emberwell.report.reading;

import club.emberwell.bench.FieldReader;
import club.emberwell.bench.MachineReader;
import club.emberwell.laser.Process;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;

/** What was done, to how thick a piece, and the free texts. */
final class WorkStep implements ReportInterpreter.Step {
  @Override
  public void read(Draft draft) {
    WrittenWork written = draft.written.work();
    Particulars said = draft.written.particulars();
    FieldReader in = draft.in;
    draft.process =
        in.choice(
            "/process",
            in.required("/process", written.process()),
            Process::of,
            Process.values(),
            Process::code);
    draft.thicknessMm =
        in.quantity(
            "/thickness", QuantityKind.THICKNESS, written.thickness(), ReadingLimits.THICKNESS_MM);
    if (draft.process == Process.CUT && FieldReader.isAbsent(written.thickness())) {
      String detail = "A cut without its thickness tells others little: how thick was the piece?";
      in.add(Remark.warning(RemarkId.THICKNESS_MISSING, "/thickness", detail));
    }
    draft.particulars =
        new Particulars(
            in.text("/notes", said.notes(), ReadingLimits.NOTES, true),
            in.text("/lot", said.lot(), ReadingLimits.LOT, false),
            in.text(
                "/controllerVersion",
                said.controllerVersion(),
                ReadingLimits.CONTROLLER_VERSION,
                false));
    MachineReader.confirmed(in, draft.written.confirmed());
  }
}
