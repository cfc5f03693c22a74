package club.emberwell.report;

import club.emberwell.bench.FieldReader;
import club.emberwell.bench.MachineReader;
import club.emberwell.laser.Process;
import club.emberwell.quantity.QuantityKind;

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
            "/thickness", QuantityKind.THICKNESS, written.thickness(), ReportLimits.THICKNESS_MM);
    draft.particulars =
        new Particulars(
            in.text("/notes", said.notes(), ReportLimits.NOTES, true),
            in.text("/lot", said.lot(), ReportLimits.LOT, false),
            in.text(
                "/controllerVersion",
                said.controllerVersion(),
                ReportLimits.CONTROLLER_VERSION,
                false));
    MachineReader.confirmed(in, draft.written.confirmed());
  }
}
