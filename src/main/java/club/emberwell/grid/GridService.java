package club.emberwell.grid;

import club.emberwell.bench.StoredJson;
import club.emberwell.entry.Cause;
import club.emberwell.entry.ComesBack;
import club.emberwell.entry.EntryAccess;
import club.emberwell.entry.EntryAction;
import club.emberwell.entry.EntryEntity;
import club.emberwell.entry.EntryKind;
import club.emberwell.entry.EntryLife;
import club.emberwell.entry.Kind;
import club.emberwell.entry.NewEntry;
import club.emberwell.entry.Origin;
import club.emberwell.entry.Returned;
import club.emberwell.entry.Words;
import club.emberwell.grid.plan.GridPlan;
import club.emberwell.grid.plan.GridPlanner;
import club.emberwell.grid.plan.GridPlanner.Planned;
import club.emberwell.grid.reading.GridLimits;
import club.emberwell.grid.reading.WrittenGrid;
import club.emberwell.laser.Laser;
import club.emberwell.listing.ListOrder;
import club.emberwell.listing.Part;
import club.emberwell.listing.Slice;
import club.emberwell.member.Actor;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.remark.EntryChanged;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.remark.RemarkId;
import club.emberwell.report.ProhibitedWork;
import club.emberwell.report.reading.WrittenHash;
import club.emberwell.tag.Tags;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

/**
 * Keeps a member's test grids. Nobody else sees them. Every write is one transaction with its
 * revision; whatever is thrown, nothing was stored.
 */
@ApplicationScoped
public class GridService implements Kind, ComesBack {
  private static final ListOrder MINE = ListOrder.newestFirst("grids", GridLimits.PAGE);

  private static final Set<EntryKind> GRIDS = Set.of(EntryKind.GRID);

  private final GridRepository grids;
  private final GridPlanner planner;
  private final EntryLife life;
  private final Tags tags;

  GridService(GridRepository grids, GridPlanner planner, EntryLife life, Tags tags) {
    this.grids = grids;
    this.planner = planner;
    this.life = life;
    this.tags = tags;
  }

  /**
   * A grid that was just stored.
   *
   * @param created false where the same one was there already
   */
  public record Saved(Grid grid, Planned planned, boolean created) {}

  /**
   * Plans a grid and keeps it with the values its axes got.
   *
   * @throws EntryRefused with the pointers of the fields at fault
   * @throws ProhibitedWork where the work takes no settings
   */
  @Transactional
  public Saved save(Actor actor, GridPosting posting) {
    UUID author = EntryAccess.signedIn(actor);
    String asked = WrittenHash.ofWords(posting.written());
    if (life.isThere(posting.id(), EntryKind.GRID, author)) {
      GridEntity there = grids.whole(posting.id()).orElseThrow();
      if (!asked.equals(there.askedHash())) {
        throw EntryLife.taken(EntryKind.GRID);
      }
      Grid grid = there.toGrid(actor.handle());
      return new Saved(
          grid, planner.stored(actor, grid.written(), grid.style(), grid.laser()), false);
    }
    requireRoom(author);
    Planned planned = planner.plan(actor, posting.written(), posting.style());
    UUID id = posting.id() == null ? UUID.randomUUID() : posting.id();
    Instant at = posting.at() == null ? Instant.now() : posting.at();
    NewEntry made = new NewEntry(id, EntryKind.GRID, null, Origin.HERE, at);
    GridEntity grid = new GridEntity(life.begin(actor, made, words(planned)), asked);
    grid.take(planned.written(), posting.style(), planned.plan().laser());
    grids.persistAndFlush(grid);
    tags.give(id);
    return new Saved(grid.toGrid(actor.handle()), planned, true);
  }

  /**
   * Plans a grid anew. Once its results are in, its cells stay.
   *
   * @param version the version the change is based on
   * @throws EntryChanged where it was changed meanwhile
   */
  @Transactional
  public Saved revise(Actor actor, UUID id, int version, WrittenGrid written, NumberStyle style) {
    EntryEntity entry = life.editable(actor, GRIDS, id, version);
    GridEntity grid = grids.whole(id).orElseThrow();
    Planned planned = planner.plan(actor, written, style);
    if (grid.reportId() != null && !planned.written().sameCells(grid.written())) {
      String detail = "This grid has results. Its tests stay as they were burned.";
      throw new EntryRefused(RemarkId.GRID_JUDGED, "/axes", detail);
    }
    grid.take(planned.written(), style, laserOf(grid, planned));
    life.rewritten(entry, words(planned), EntryAction.EDITED, Cause.now(actor, null));
    return new Saved(grid.toGrid(actor.handle()), planned, false);
  }

  /** A machine that was changed later does not change what was planned for it. */
  private static Laser laserOf(GridEntity grid, Planned planned) {
    boolean judged = grid.reportId() != null;
    return judged ? grid.laser() : planned.plan().laser();
  }

  /** Takes one's own grid back; it stays in the history. A second time does nothing. */
  public void withdraw(Actor actor, UUID id, Integer version) {
    life.withdraw(actor, GRIDS, id, version);
  }

  /**
   * One of the actor's grids.
   *
   * @throws EntryUnknown where there is none, or it was withdrawn
   */
  @Transactional
  public Grid get(Actor actor, UUID id) {
    GridEntity grid = own(actor, id);
    return grid.toGrid(actor.handle());
  }

  /** The actor's grid whose results stand in a report. */
  @Transactional
  public Optional<UUID> ofReport(Actor actor, UUID report) {
    return grids
        .ofReport(report)
        .map(GridEntity::entry)
        .filter(entry -> actor.is(entry.memberId()) && entry.live())
        .map(EntryEntity::id);
  }

  /**
   * The same where it may be withdrawn by now, so that what was typed about it is not lost.
   *
   * @throws EntryUnknown where the actor has none
   */
  @Transactional
  public Grid even(Actor actor, UUID id) {
    GridEntity grid = grids.whole(id).orElseThrow(GridService::unknown);
    EntryAccess.see(actor, grid.entry());
    return grid.toGrid(actor.handle());
  }

  private GridEntity own(Actor actor, UUID id) {
    GridEntity grid = grids.whole(id).orElseThrow(GridService::unknown);
    EntryAccess.standing(actor, grid.entry());
    return grid;
  }

  private static EntryUnknown unknown() {
    return new EntryUnknown("grid");
  }

  /** The actor's grids that still stand, newest first. */
  @Transactional
  public Slice<Grid> mine(Actor actor, Part part) {
    UUID author = EntryAccess.signedIn(actor);
    return Slice.read(
            part, MINE, place -> grids.standing(author, place), grid -> grid.entry().place())
        .map(grid -> grid.toGrid(actor.handle()));
  }

  /** What a grid comes to now: its cells stay, their chances are those of the present range. */
  @Transactional
  public Planned plan(Actor actor, Grid grid) {
    return planner.stored(actor, grid.written(), grid.style(), grid.laser());
  }

  /** The cells of a grid and how they lie, without their chances: no range is asked. */
  @Transactional
  public GridPlan cells(Grid grid) {
    return planner.cells(grid.written(), grid.style(), grid.laser());
  }

  /** Notes in which report a grid's results stand, in the caller's transaction. */
  @Transactional(Transactional.TxType.MANDATORY)
  public Grid judged(Actor actor, UUID id, UUID report) {
    GridEntity grid = own(actor, id);
    grid.judged(report);
    return grid.toGrid(actor.handle());
  }

  @Override
  public EntryKind returning() {
    return EntryKind.GRID;
  }

  @Override
  @Transactional(value = Transactional.TxType.MANDATORY, dontRollbackOn = EntryRefused.class)
  public void comeBack(Actor actor, Returned from) {
    requireRoom(actor.memberId());
    EntryEntity entry =
        life.comeBack(
            actor,
            EntryKind.GRID,
            from,
            words -> words(planner.brought(actor, words(words), from.style())));
    WrittenGrid written = words(from.written());
    GridEntity grid = new GridEntity(entry, WrittenHash.ofWords(written));
    grid.take(written, from.style(), planner.brought(actor, written, from.style()).plan().laser());
    grid.judged(from.beside().report());
    grids.persistAndFlush(grid);
    tags.giveBack(from.id(), from.beside().tag());
  }

  private static WrittenGrid words(String json) {
    return StoredJson.brought(json, WrittenGridConverter.SHAPE);
  }

  private void requireRoom(UUID author) {
    if (grids.countOf(author) >= GridLimits.PER_MEMBER) {
      String detail = "You have as many grids as fit: %d.".formatted(GridLimits.PER_MEMBER);
      throw new EntryRefused(RemarkId.GRIDS_MANY, "", detail);
    }
  }

  @Override
  public Set<EntryKind> kinds() {
    return GRIDS;
  }

  @Override
  @Transactional
  public void rewrite(Actor actor, UUID id, int version, String written, String reason) {
    NumberStyle style = grids.whole(id).orElseThrow().numberStyle();
    revise(actor, id, version, StoredJson.read(written, WrittenGridConverter.SHAPE), style);
  }

  private static Words words(Planned planned) {
    String name = planned.written().name();
    String title = name == null || name.isBlank() ? planned.plan().work().called() : name.strip();
    return new Words(title, StoredJson.write(planned.written()), null);
  }
}
