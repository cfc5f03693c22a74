package club.emberwell.api.grid;

import club.emberwell.api.view.QuantityJson;
import club.emberwell.api.view.SettingsJson;
import club.emberwell.catalog.CautionMark;
import club.emberwell.catalog.Cautions;
import club.emberwell.catalog.Lab;
import club.emberwell.grid.photo.GridColours;
import club.emberwell.grid.plan.GridPlan;
import club.emberwell.grid.result.Place;
import club.emberwell.grid.result.Results;
import club.emberwell.laser.Effect;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.report.reading.ReportCautions;
import club.emberwell.report.reading.TrialSnapshot;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A grid's cells with how they came out.
 *
 * @param version of the grid, for If-Match
 * @param report that holds the results; left out before there are any
 * @param best left out where none alone has the highest quality
 * @param bare colour of the bare surface; left out without a photo whose corners are marked
 * @param cells row by row
 * @param cautionCodes ids of the work's cautions from special care on, the heaviest first
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
record ResultsJson(
    UUID grid,
    int version,
    @Nullable UUID report,
    @JsonUnwrapped Counts counts,
    @Nullable Place best,
    @Nullable LabJson bare,
    List<CellJson> cells,
    List<String> cautionCodes) {
  private static final int DIGITS = 2;

  /**
   * How far it is.
   *
   * @param tests how many are burned by the plan
   */
  record Counts(int judged, int tests) {}

  /** A colour in CIELAB, D65. */
  record LabJson(BigDecimal l, BigDecimal a, BigDecimal b) {
    static LabJson of(Lab lab) {
      return lab == null ? null : new LabJson(rounded(lab.l()), rounded(lab.a()), rounded(lab.b()));
    }
  }

  /**
   * One cell.
   *
   * @param dose nominal; left out where it cannot be known
   * @param leftOut why the plan leaves it out, or left out itself
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record CellJson(
      int row,
      int column,
      SettingsJson settings,
      @Nullable QuantityJson dose,
      @Nullable String leftOut,
      @JsonUnwrapped @Nullable Judged judged,
      @JsonUnwrapped @Nullable Seen seen) {}

  /** How it came out. */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record Judged(
      @Nullable Effect effect, @Nullable Integer quality, @Nullable List<String> defects) {}

  /**
   * What the photo shows of it.
   *
   * @param distance CIEDE2000 from the bare surface
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record Seen(@Nullable LabJson colour, @Nullable BigDecimal distance) {}

  static ResultsJson of(Results results, Optional<GridColours> colours, Cautions cautions) {
    GridPlan plan = results.plan();
    return new ResultsJson(
        results.grid().id(),
        results.grid().version(),
        results.grid().report(),
        new Counts(results.judged().size(), plan.tests()),
        results.best().map(trial -> new Place(trial.row(), trial.column())).orElse(null),
        colours.map(c -> LabJson.of(c.bare())).orElse(null),
        plan.cells().stream().map(cell -> cell(cell, results, colours)).toList(),
        CautionMark.of(ReportCautions.asWritten(results.grid().written().work(), cautions))
            .map(CautionMark::codes)
            .orElse(List.of()));
  }

  private static CellJson cell(GridPlan.Cell cell, Results results, Optional<GridColours> colours) {
    QuantityKind kind = results.plan().process().doseKind().quantity();
    return new CellJson(
        cell.row(),
        cell.column(),
        SettingsJson.of(cell.settings(), results.grid().written().cell(cell.row(), cell.column())),
        QuantityJson.of(kind, cell.dose()),
        cell.burned() ? null : cell.leftOut().reason(),
        results.of(cell.row(), cell.column()).map(ResultsJson::judged).orElse(null),
        colours.flatMap(c -> c.of(cell.row(), cell.column())).map(ResultsJson::seen).orElse(null));
  }

  private static Judged judged(TrialSnapshot trial) {
    return new Judged(trial.effect(), trial.quality(), trial.defects());
  }

  private static Seen seen(GridColours.Cell cell) {
    return new Seen(
        LabJson.of(cell.colour()), cell.distance() == null ? null : rounded(cell.distance()));
  }

  private static BigDecimal rounded(double value) {
    return BigDecimal.valueOf(value).setScale(DIGITS, RoundingMode.HALF_EVEN);
  }
}
