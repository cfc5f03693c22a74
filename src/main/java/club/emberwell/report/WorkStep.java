package club.emberwell.report;

import club.emberwell.bench.FieldReader;
import club.emberwell.bench.MachineReader;
import club.emberwell.laser.Process;
import club.emberwell.quantity.QuantityKind;

/** What was done, to how thick a piece, and the free texts. */
final class WorkStep implements ReportInterpreter.Step {
  @Override
  public void read(Draft draft) {
    WrittenReport written = draft.written;
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
    draft.notes = in.text("/notes", written.notes(), ReportLimits.NOTES, true);
    draft.lot = in.text("/lot", written.lot(), ReportLimits.LOT, false);
    draft.controllerVersion =
        in.text(
            "/controllerVersion",
            written.controllerVersion(),
            ReportLimits.CONTROLLER_VERSION,
            false);
    MachineReader.confirmed(in, written.confirmed());
  }
}
