package club.emberwell.api.grid;

import club.emberwell.api.view.CautionJson;
import club.emberwell.api.view.Noticed;
import club.emberwell.grid.Grid;
import club.emberwell.grid.plan.GridPlanner.Planned;
import club.emberwell.grid.reading.WrittenGrid;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import com.fasterxml.jackson.databind.annotation.JsonSerialize;
import java.util.List;
import java.util.UUID;

/**
 * A grid with what it comes to.
 *
 * @param id left out of a plan that is not stored, as version, name and report are
 * @param report that holds its results; left out before there are any
 * @param written as it can be sent again, both axes with their values
 * @param cautions of the work, bans first; never says that something is safe
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
record GridJson(
    UUID id,
    Integer version,
    String name,
    UUID report,
    @JsonSerialize(using = Sendable.class) WrittenGrid written,
    GridPlanJson plan,
    List<CautionJson> cautions,
    @JsonUnwrapped Noticed noticed) {

  /** A grid in a list. */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record Brief(UUID id, int version, String name, UUID report, String created) {
    static Brief of(Grid grid) {
      return new Brief(
          grid.id(),
          grid.version(),
          grid.name(),
          grid.report(),
          grid.entry().times().created().toString());
    }
  }

  static GridJson of(Planned planned) {
    return new GridJson(
        null,
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
        grid.id(),
        grid.version(),
        grid.name(),
        grid.report(),
        grid.written(),
        plan.plan,
        plan.cautions,
        plan.noticed);
  }
}
