package club.emberwell.web.recipe;

import club.emberwell.bench.Machine;
import club.emberwell.bench.Machines;
import club.emberwell.entry.Revision;
import club.emberwell.grid.Grid;
import club.emberwell.grid.result.GridResults;
import club.emberwell.grid.result.Results;
import club.emberwell.member.Actor;
import club.emberwell.recipe.CameFrom;
import club.emberwell.recipe.CameFrom.Way;
import club.emberwell.recipe.Revisions;
import club.emberwell.recipe.WrittenRecipe;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.report.ReportService;
import club.emberwell.report.StoredReport;
import club.emberwell.report.reading.TrialSnapshot;
import club.emberwell.report.reading.WrittenReport;
import club.emberwell.report.reading.WrittenTrial;
import club.emberwell.web.report.LikelyMachine;
import club.emberwell.web.report.ReportFormValues;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/** What stands in the form that "Add to my bench" leads to, wherever it was pressed. */
@ApplicationScoped
class NewRecipe {
  private static final String MACHINE = "machine";
  private static final String NAME = "name";

  private final ReportService reports;
  private final GridResults grids;
  private final Revisions recipes;
  private final Machines machines;
  private final LikelyMachine likely;

  NewRecipe(
      ReportService reports,
      GridResults grids,
      Revisions recipes,
      Machines machines,
      LikelyMachine likely) {
    this.reports = reports;
    this.grids = grids;
    this.recipes = recipes;
    this.machines = machines;
    this.likely = likely;
  }

  /** What is known beforehand, by field name, and where it came from. */
  record Known(Map<String, String> values, CameFrom from) {}

  /** Fields that an address names, as those of the answer do. */
  static Known named(Map<String, String> given) {
    return new Known(given, CameFrom.of(given.isEmpty() ? Way.HAND : Way.ANSWER));
  }

  /**
   * A test of a report, for the machine on which the reader would do it.
   *
   * @param trial 0 = the first
   */
  Known report(Actor actor, UUID id, int trial) {
    StoredReport report = reports.get(actor, id);
    int tests = report.written().trials().size();
    int which = trial >= 0 && trial < tests ? trial : 0;
    Map<String, String> values = ReportFormValues.repeated(report, which);
    values.put(NAME, report.snapshot().work().called());
    List<Machine> own = machines.of(actor);
    UUID same = report.written().machine();
    Optional<UUID> machine =
        own.stream().map(Machine::id).filter(one -> one.equals(same)).findFirst();
    machine
        .or(() -> likely.of(actor, own, report.snapshot().laser().source()))
        .ifPresent(one -> values.put(MACHINE, one.toString()));
    return new Known(values, CameFrom.report(id, tests == 1 ? null : (Integer) which));
  }

  /** The best test of one's own grid; empty where none alone is the best. */
  Optional<Known> best(Actor actor, UUID id) {
    Results results = grids.of(actor, id);
    return results.best().map(best -> best(results.grid(), results.report(), best));
  }

  private static Known best(Grid grid, StoredReport report, TrialSnapshot best) {
    WrittenTrial trial =
        new WrittenTrial(
            null, null, grid.written().cell(best.row(), best.column()), null, null, null);
    WrittenReport tried = report.written().trying(List.of(trial));
    Map<String, String> values =
        ReportFormValues.without(
            tried, report.remarks(), 0, property -> property.value().shape().isFree());
    values.put(NAME, grid.name());
    return new Known(values, CameFrom.grid(grid.id()));
  }

  /** The report that holds the results of a grid. */
  Optional<UUID> results(Actor actor, UUID grid) {
    return Optional.ofNullable(grids.of(actor, grid).grid().report());
  }

  /**
   * A revision of a recipe, for another one.
   *
   * @throws EntryUnknown where there is no such revision
   */
  Known recipe(Actor actor, UUID id, int version) {
    WrittenRecipe written =
        recipes.of(actor, id).stream()
            .filter(revision -> revision.version() == version)
            .findFirst()
            .map(Revision::written)
            .orElseThrow(() -> new EntryUnknown("revision"));
    Map<String, String> values =
        new LinkedHashMap<>(
            ReportFormValues.without(written.report(), List.of(), 0, property -> false));
    values.put(NAME, written.name());
    values.put("folder", written.folder());
    values.putAll(JobFields.values(written.job()));
    return new Known(values, CameFrom.recipe(id, version));
  }
}
