package club.emberwell.report.reading;

import club.emberwell.bench.FieldReader;
import club.emberwell.bench.MachineReader;
import club.emberwell.bench.WrittenLaser;
import club.emberwell.laser.Laser;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;

/** The laser: a machine's, or one described in the report; exactly one of the two. */
final class LaserStep implements ReportInterpreter.Step {
  @Override
  public void read(Draft draft) {
    WrittenReport written = draft.written;
    if (written.machine() != null && written.laser() != null) {
      String detail = "Choose a machine or describe a laser, not both.";
      draft.in.add(Remark.error(RemarkId.MACHINE_AND_LASER, "/laser", detail));
    } else if (written.machine() != null) {
      ofMachine(draft);
    } else if (written.laser() != null) {
      draft.laser = described(draft.in, written.laser());
    } else {
      String detail = "Choose one of your machines or describe the laser.";
      draft.in.add(Remark.error(RemarkId.REQUIRED, "/machine", detail));
    }
  }

  private static void ofMachine(Draft draft) {
    draft.laser = draft.machine;
    if (draft.machine == null) {
      String detail = "You have no such machine.";
      draft.in.add(Remark.error(RemarkId.MACHINE_UNKNOWN, "/machine", detail));
    }
  }

  /** A laser described in the entry at {@code /laser}; null where it is at fault. */
  static Laser described(FieldReader in, WrittenLaser written) {
    Laser laser = MachineReader.laser(in, "/laser", written);
    if (laser != null) {
      MachineReader.implausible(laser).stream()
          .map(remark -> remark.at("/laser" + remark.field()))
          .forEach(in::add);
    }
    return laser;
  }
}
