package club.emberwell.api.grid;

import club.emberwell.api.view.CautionJson;
import club.emberwell.api.view.Noticed;
import club.emberwell.api.view.Sendable;
import club.emberwell.api.view.Times;
import club.emberwell.entry.Entry;
import club.emberwell.entry.EntryState;
import club.emberwell.grid.Grid;
import club.emberwell.grid.plan.GridPlanner.Planned;
import club.emberwell.grid.reading.WrittenGrid;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import com.fasterxml.jackson.databind.annotation.JsonSerialize;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A grid with what it comes to.
 *
 * @param kept left out of a plan that is not stored, as name and report are
 * @param report that holds its results; left out before there are any
 * @param written as it can be sent again, both axes with their values
 * @param cautions of the work, bans first; never says that something is safe
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
record GridJson(
    @JsonUnwrapped @Nullable Kept kept,
    @Nullable String name,
    @Nullable UUID report,
    @JsonSerialize(using = Sendable.class) WrittenGrid written,
    GridPlanJson plan,
    List<CautionJson> cautions,
    @JsonUnwrapped Noticed noticed) {

  /** Which grid, in which state. */
  record Kept(UUID id, int version, EntryState state, @JsonUnwrapped Times times) {
    static Kept of(Grid grid) {
      Entry.Times at = grid.entry().times();
      return new Kept(
          grid.id(), grid.version(), grid.entry().state(), new Times(at.created(), at.updated()));
    }
  }

  /** A grid in a list. */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record Brief(@JsonUnwrapped Kept kept, @Nullable String name, @Nullable UUID report) {
    static Brief of(Grid grid) {
      return new Brief(Kept.of(grid), grid.name(), grid.report());
    }
  }

  static GridJson of(Planned planned) {
    return new GridJson(
        null,
        null,
        null,
        planned.written(),
        GridPlanJson.of(planned.plan()),
        planned.cautions().stream().map(CautionJson::of).toList(),
        Noticed.of(planned.remarks()));
  }

  static GridJson of(Grid grid, Planned planned) {
    GridJson plan = of(planned);
    return new GridJson(
        Kept.of(grid),
        grid.name(),
        grid.report(),
        grid.written(),
        plan.plan,
        plan.cautions,
        plan.noticed);
  }
}
