package club.emberwell.grid.plan;

import club.emberwell.grid.plan.GridPlan.Cell;
import club.emberwell.grid.reading.GridReading;
import club.emberwell.laser.Laser;
import club.emberwell.laser.Process;
import club.emberwell.laser.Setting;
import club.emberwell.laser.Settings;
import club.emberwell.laser.dose.Dose;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.remark.Remarks;
import club.emberwell.stats.Interval;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Puts a plan together from what was read and what is known; pure. */
final class Planning {
  /** Round the dose of one's own settings where nobody knows more (own rule, no source). */
  private static final double BESIDE = 2;

  private Planning() {}

  /**
   * @param base whole settings to begin with, as far as they are known
   * @param reader in whose unit speeds are rounded
   * @throws EntryRefused where more must be said, or the machine can do none of it
   */
  static GridPlan of(GridReading read, Settings base, Known known, UnitPreferences reader) {
    Laser laser = read.laser();
    Process process = read.work().process();
    Optional<Interval> doses = known.doses().or(() -> own(laser, process, base));
    GridPlan.Axes axes = new AxesPlanner(laser, process, base, read.wish(), reader).over(doses);
    Settings stay = base.with(axes.across().setting(), null).with(axes.down().setting(), null);
    complete(stay, axes);
    List<Cell> cells =
        new Cells(laser, process, known::chance).of(stay, axes.across(), axes.down());
    burnable(cells);
    Layout layout = Layout.of(read.piece(), laser, axes.across().size(), axes.down().size());
    Kinematics motion = Kinematics.of(laser, read.timing());
    return new GridPlan(
        laser,
        read.work(),
        stay,
        axes,
        cells,
        cover(read, known, doses, cells),
        layout,
        BurnTime.of(cells, laser, process, layout, motion));
  }

  private static Optional<Interval> own(Laser laser, Process process, Settings base) {
    return Optional.ofNullable(Dose.derive(laser, process, base).dose(process.doseKind()))
        .filter(dose -> dose > 0)
        .map(dose -> new Interval(dose / BESIDE, dose * BESIDE, Double.NaN));
  }

  private static Cover cover(
      GridReading read, Known known, Optional<Interval> doses, List<Cell> cells) {
    if (known.doses().isEmpty()) {
      return Cover.of(Cover.Basis.BY_HAND, null, null, null, cells);
    }
    Interval wanted = doses.orElseThrow();
    Cover cover = Cover.of(known.basis(), wanted.low(), wanted.high(), known.inside(), cells);
    // whoever chose other doses by hand wanted those
    return read.wish().settled() && !cover.whole()
        ? Cover.of(Cover.Basis.BY_HAND, null, null, null, cells)
        : cover;
  }

  private static void complete(Settings stay, GridPlan.Axes axes) {
    List<Remark> missing =
        Stream.of(Setting.values())
            .filter(setting -> setting.form().isNeeded())
            .filter(setting -> stay.number(setting) == null)
            .filter(s -> s != axes.across().setting() && s != axes.down().setting())
            .map(
                setting ->
                    Remark.error(
                        RemarkId.REQUIRED,
                        "/settings/" + setting.code(),
                        "Every test needs it. Give it here or put it on a side of the grid."))
            .toList();
    Remarks.refuse(missing);
  }

  private static void burnable(List<Cell> cells) {
    if (cells.stream().noneMatch(Cell::burned)) {
      String detail = "Your machine can do none of these tests. " + cells.get(0).leftOut().reason();
      throw new EntryRefused(RemarkId.NO_TEST_LEFT, "/axes", detail);
    }
  }
}
