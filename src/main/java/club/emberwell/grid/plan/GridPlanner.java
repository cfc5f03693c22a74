package club.emberwell.grid.plan;

import club.emberwell.bench.Machine;
import club.emberwell.bench.Machines;
import club.emberwell.catalog.Caution;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.consensus.ConsensusService;
import club.emberwell.entry.EntryAccess;
import club.emberwell.grid.reading.GridReader;
import club.emberwell.grid.reading.GridReading;
import club.emberwell.grid.reading.WrittenAxes;
import club.emberwell.grid.reading.WrittenGrid;
import club.emberwell.laser.Laser;
import club.emberwell.laser.Settings;
import club.emberwell.laser.dose.Settable;
import club.emberwell.member.Actor;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.remark.Remarks;
import club.emberwell.report.ProhibitedWork;
import club.emberwell.report.reading.ReportCautions;
import club.emberwell.report.reading.WrittenSettings;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Plans grids: reads what is wanted, asks the range, and lays the cells out. Stores nothing. */
@ApplicationScoped
public class GridPlanner {
  private final Machines machines;
  private final ConsensusService consensus;
  private final CatalogService catalog;

  GridPlanner(Machines machines, ConsensusService consensus, CatalogService catalog) {
    this.machines = machines;
    this.consensus = consensus;
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
    GridReading read = readable(written, style, machine.map(Machine::laser).orElse(null));
    return planned(actor, written, read, machine.map(Machine::id).orElse(null), true);
  }

  /**
   * Plans a stored grid: its cells stay as they are, their chances are those of the present range.
   *
   * @param laser as it was when the grid was planned
   */
  public Planned stored(Actor actor, WrittenGrid written, NumberStyle style, Laser laser) {
    GridReading read = readable(written, style, laser);
    UUID machine =
        written.machine() == null
            ? null
            : machines.find(actor.memberId(), written.machine()).map(Machine::id).orElse(null);
    return planned(actor, written, read, machine, false);
  }

  /** The cells of a stored grid and how they lie; their chances are not known. */
  public GridPlan cells(WrittenGrid written, NumberStyle style, Laser laser) {
    GridReading read = readable(written, style, laser);
    return Planning.of(read, read.base(), Known.NOTHING, UnitPreferences.metric());
  }

  /**
   * A grid of a file of its owner's, whose machine may be removed by now: its cells, whose chances
   * are not asked.
   *
   * @throws EntryRefused also where the work takes no settings
   */
  public Planned brought(Actor actor, WrittenGrid written, NumberStyle style) {
    Optional<Machine> machine =
        written.machine() == null
            ? Optional.empty()
            : machines.even(actor.memberId(), written.machine());
    try {
      GridReading read = readable(written, style, machine.map(Machine::laser).orElse(null));
      GridPlan plan = Planning.of(read, read.base(), Known.NOTHING, actor.units());
      return new Planned(written, plan, List.of(), read.noticed().remarks());
    } catch (ProhibitedWork e) {
      throw new EntryRefused(RemarkId.PROHIBITED, "/material", e.ban().sentence());
    }
  }

  private GridReading readable(WrittenGrid written, NumberStyle style, Laser laser) {
    GridReading read = GridReader.read(written, laser, catalog.snapshot(), style);
    if (read.noticed().ban().isPresent()) {
      throw new ProhibitedWork(read.noticed().ban().get());
    }
    Remarks.refuse(read.noticed().remarks());
    return read;
  }

  /** With a speed that the actor can set in their own unit. */
  private static Settings begun(Known known, Laser laser, Actor actor) {
    return known
        .start()
        .map(start -> Settable.of(start, 0, laser.maxSpeedMmS(), actor.units()).settings())
        .orElse(Settings.NONE);
  }

  private Planned planned(
      Actor actor, WrittenGrid written, GridReading read, UUID machine, boolean anew) {
    Known known =
        consensus
            .planned(read.work(), read.laser(), actor, machine)
            .map(Known::of)
            .orElse(Known.NOTHING);
    Settings base = anew ? read.base().or(begun(known, read.laser(), actor)) : read.base();
    GridPlan plan = Planning.of(read, base, known, actor.units());
    WrittenSettings said = written.settings() == null ? WrittenSettings.NONE : written.settings();
    WrittenAxes axes = WrittenAxes.of(written.axes(), plan.axes().across(), plan.axes().down());
    return new Planned(
        written.burning(said.or(plan.base()), axes),
        plan,
        ReportCautions.of(read.work(), read.laser().source(), catalog.snapshot().cautions()),
        read.noticed().remarks());
  }
}
