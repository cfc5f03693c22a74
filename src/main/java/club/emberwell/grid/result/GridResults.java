package club.emberwell.grid.result;

import club.emberwell.entry.Cause;
import club.emberwell.entry.EntryAction;
import club.emberwell.entry.EntryEntity;
import club.emberwell.entry.EntryKind;
import club.emberwell.entry.EntryLife;
import club.emberwell.entry.EntryState;
import club.emberwell.entry.Origin;
import club.emberwell.grid.Grid;
import club.emberwell.grid.GridService;
import club.emberwell.grid.photo.GridPhotos;
import club.emberwell.member.Actor;
import club.emberwell.remark.EntryChanged;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.remark.RemarkId;
import club.emberwell.report.Posting;
import club.emberwell.report.ProhibitedWork;
import club.emberwell.report.ReportService;
import club.emberwell.report.StoredReport;
import club.emberwell.report.photo.Photos;
import club.emberwell.report.reading.WrittenHash;
import club.emberwell.report.reading.WrittenReport;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.Set;
import java.util.UUID;

/**
 * Takes how the tests of a grid came out: one report for each grid, in one transaction with the
 * grid that knows it. Sent again they are another version of that report; the same sent again
 * change nothing, whichever version they were based on.
 */
@ApplicationScoped
public class GridResults {
  private static final Set<EntryKind> GRIDS = Set.of(EntryKind.GRID);

  private final GridService grids;
  private final GridPhotos photos;
  private final ReportService reports;
  private final EntryLife life;

  GridResults(GridService grids, GridPhotos photos, ReportService reports, EntryLife life) {
    this.grids = grids;
    this.photos = photos;
    this.reports = reports;
    this.life = life;
  }

  /**
   * What is known of a grid that still stands.
   *
   * @throws EntryUnknown where the actor has no such grid
   */
  @Transactional
  public Results of(Actor actor, UUID id) {
    return results(actor, grids.get(actor, id));
  }

  /** The same of a grid that may be withdrawn by now. */
  @Transactional
  public Results even(Actor actor, UUID id) {
    return results(actor, grids.even(actor, id));
  }

  private Results results(Actor actor, Grid grid) {
    return new Results(grid, grids.plan(actor, grid).plan(), report(actor, grid));
  }

  private StoredReport report(Actor actor, Grid grid) {
    return grid.report() == null ? null : reports.get(actor, grid.report());
  }

  /**
   * The photo that goes with results, made ready outside of a transaction; null where none is to be
   * shown.
   */
  public Photos.Ready shown(Actor actor, UUID id, WrittenResults written) {
    boolean stands = grids.even(actor, id).entry().state() == EntryState.LIVE;
    return stands && Boolean.TRUE.equals(written.showPhoto()) ? photos.toShow(actor, id) : null;
  }

  /**
   * Keeps results.
   *
   * @param version of the grid that they are based on, null = whatever it is
   * @param photo of {@link #shown}, or null
   * @throws EntryRefused with the pointers of the fields at fault
   * @throws ProhibitedWork where the work takes no settings
   * @throws EntryChanged where other results came meanwhile
   */
  @Transactional
  public Results send(
      Actor actor, UUID id, Integer version, WrittenResults written, Photos.Ready photo) {
    // whoever sends the same at the same time waits here
    EntryEntity entry = life.own(actor, GRIDS, id, null);
    if (!entry.live()) {
      String detail = "You have withdrawn this grid, so its results cannot be saved.";
      throw new EntryRefused(RemarkId.GRID_WITHDRAWN, "", detail);
    }
    Grid grid = grids.get(actor, id);
    Results before = new Results(grid, grids.cells(grid), report(actor, grid));
    Judgements read = Judgements.read(written, before.plan());
    WrittenReport report = read.report(before.grid().written());
    if (!same(before.report(), report)) {
      if (version != null && entry.version() != version) {
        throw new EntryChanged(entry.version());
      }
      UUID stored = store(actor, before, read, report);
      grids.judged(actor, id, stored);
      life.touched(entry, EntryAction.EDITED, Cause.now(actor, null));
    }
    if (photo != null) {
      photos.show(actor, id, grids.get(actor, id).report(), photo);
    }
    return results(actor, grids.get(actor, id));
  }

  private static boolean same(StoredReport before, WrittenReport now) {
    return before != null
        && WrittenHash.of(before.written()).equals(WrittenHash.of(now))
        && !before.snapshot().state().gone();
  }

  private UUID store(Actor actor, Results before, Judgements read, WrittenReport report) {
    Posting posting = new Posting(null, report, before.grid().style(), Origin.HERE, null, false);
    try {
      if (before.report() == null) {
        return reports.post(actor, posting).snapshot().id();
      }
      UUID id = before.report().snapshot().id();
      if (before.report().snapshot().state().gone()) {
        String detail = "The report of this grid was withdrawn or removed. It cannot be edited.";
        throw new EntryRefused(RemarkId.REPORT_GONE, "", detail);
      }
      reports.revise(actor, id, before.report().snapshot().version(), posting, null);
      return id;
    } catch (EntryRefused e) {
      throw read.atFields(e);
    }
  }
}
