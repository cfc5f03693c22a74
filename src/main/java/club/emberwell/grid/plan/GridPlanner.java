package club.emberwell.grid.plan;

import club.emberwell.bench.Machine;
import club.emberwell.bench.Machines;
import club.emberwell.catalog.Catalog;
import club.emberwell.catalog.Caution;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.entry.EntryAccess;
import club.emberwell.grid.reading.Axis;
import club.emberwell.grid.reading.GridReader;
import club.emberwell.grid.reading.GridReading;
import club.emberwell.grid.reading.WrittenAxes;
import club.emberwell.grid.reading.WrittenGrid;
import club.emberwell.laser.Laser;
import club.emberwell.member.Actor;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.remark.Remarks;
import club.emberwell.report.ProhibitedWork;
import club.emberwell.report.reading.ReportCautions;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Plans grids: reads what is wanted, asks the range, and lays the cells out. Stores nothing. */
@ApplicationScoped
public class GridPlanner {
  private final Machines machines;
  private final CatalogService catalog;

  GridPlanner(Machines machines, CatalogService catalog) {
    this.machines = machines;
    this.catalog = catalog;
  }

  /**
   * A plan with what stands beside it.
   *
   * @param written what came in, both axes with their values
   * @param cautions of the work, bans first
   * @param remarks warnings and notes
   */
  public record Planned(
      WrittenGrid written, GridPlan plan, List<Caution> cautions, List<Remark> remarks) {}

  /**
   * Plans a grid on one of the actor's machines or a laser that is described.
   *
   * @throws EntryRefused with the pointers of the fields at fault
   * @throws ProhibitedWork where the work takes no settings
   */
  public Planned plan(Actor actor, WrittenGrid written, NumberStyle style) {
    UUID owner = EntryAccess.signedIn(actor);
    Optional<Machine> machine =
        written.machine() == null ? Optional.empty() : machines.find(owner, written.machine());
    return plan(actor, written, style, machine.map(Machine::laser).orElse(null));
  }

  /**
   * The same with a machine's laser as it was.
   *
   * @param laser null where the grid describes one, or its machine is not the actor's
   */
  public Planned plan(Actor actor, WrittenGrid written, NumberStyle style, Laser laser) {
    Catalog known = catalog.snapshot();
    GridReading read = GridReader.read(written, laser, known, style);
    if (read.noticed().ban().isPresent()) {
      throw new ProhibitedWork(read.noticed().ban().get());
    }
    Remarks.refuse(read.noticed().remarks());
    List<Caution> cautions =
        ReportCautions.of(read.work(), read.laser().source(), known.cautions());
    Axis across = read.wish().across();
    Axis down = read.wish().down();
    if (!read.wish().settled()) {
      throw new EntryRefused(RemarkId.RANGE_MISSING, "/axes", "Give both axes their values.");
    }
    Cells cells = new Cells(read.laser(), read.work().process(), dose -> Optional.empty());
    GridPlan plan = laidOut(read, new GridPlan.Axes(across, down), cells);
    return new Planned(
        written.burning(written.settings(), WrittenAxes.of(written.axes(), across, down)),
        plan,
        cautions,
        read.noticed().remarks());
  }

  private static GridPlan laidOut(GridReading read, GridPlan.Axes axes, Cells maker) {
    List<GridPlan.Cell> cells = maker.of(read.base(), axes.across(), axes.down());
    Laser laser = read.laser();
    Layout layout = Layout.of(read.piece(), laser, axes.across().size(), axes.down().size());
    Kinematics motion = Kinematics.of(laser, read.timing());
    return new GridPlan(
        laser,
        read.work(),
        read.base(),
        axes,
        cells,
        Cover.of(Cover.Basis.BY_HAND, null, null, null, cells),
        layout,
        BurnTime.of(cells, laser, read.work().process(), layout, motion));
  }
}
