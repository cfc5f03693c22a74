package club.emberwell.report.reading;

import club.emberwell.bench.FieldReader;
import club.emberwell.bench.WrittenLaser;
import club.emberwell.laser.Laser;
import club.emberwell.laser.Process;
import club.emberwell.laser.Settings;
import club.emberwell.laser.dose.Derived;
import club.emberwell.laser.dose.Dose;
import club.emberwell.laser.dose.Plausibility;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.Remark;
import club.emberwell.remark.Remarks;
import java.util.List;

/** Computes a dose from what somebody typed; pure. */
public final class DoseCalculator {
  private DoseCalculator() {}

  /** The inputs as read, and what follows. */
  public record Answer(
      Laser laser, Process process, Settings settings, Derived derived, List<Remark> remarks) {}

  /**
   * @throws EntryRefused with the pointers of the fields at fault
   */
  public static Answer compute(
      WrittenLaser laser, String process, WrittenSettings settings, NumberStyle style) {
    FieldReader in = new FieldReader(style);
    Laser read = in.required("/laser", laser) == null ? null : LaserStep.described(in, laser);
    Process work =
        in.choice(
            "/process",
            in.required("/process", process),
            Process::of,
            Process.values(),
            Process::code);
    Settings set = SettingsReader.read(in, "/settings", settings, read);
    Remarks.refuse(in.remarks());
    Derived derived = Dose.derive(read, work, set);
    Plausibility.check(read, work, set, derived).stream()
        .filter(remark -> !remark.field().startsWith("/laser"))
        .forEach(in::add);
    return new Answer(read, work, set, derived, in.remarks());
  }
}
