package club.emberwell.api.grid;

import club.emberwell.api.view.LaserJson;
import club.emberwell.api.view.QuantityJson;
import club.emberwell.api.view.SettingsJson;
import club.emberwell.grid.plan.BurnTime;
import club.emberwell.grid.plan.Cover;
import club.emberwell.grid.plan.GridPlan;
import club.emberwell.grid.plan.Layout;
import club.emberwell.grid.reading.Axis;
import club.emberwell.laser.Amount;
import club.emberwell.quantity.QuantityKind;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.math.BigDecimal;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a grid comes to. Doses are nominal.
 *
 * @param settings those that are the same in all cells
 * @param tests how many are burned
 * @param cells row by row
 */
record GridPlanJson(
    LaserJson laser,
    SettingsJson settings,
    AxesJson axes,
    int tests,
    List<CellJson> cells,
    CoverJson cover,
    LayoutJson layout,
    BurnJson burn) {

  /** The columns and the rows. */
  record AxesJson(AxisJson across, AxisJson down) {}

  /**
   * One side of the grid.
   *
   * @param setting as it stands among the settings of the cells
   * @param values in their order
   */
  record AxisJson(String setting, List<Object> values) {
    static AxisJson of(Axis axis) {
      return new AxisJson(
          SettingsJson.code(axis.setting(), axis.values().get(0)),
          axis.values().stream()
              .map(
                  value ->
                      value instanceof Amount amount
                          ? (Object) QuantityJson.of(amount.kind(), amount.number())
                          : value)
              .toList());
    }
  }

  /**
   * One test.
   *
   * @param chance that it comes out right; left out where it is not known
   * @param leftOut why it is not burned; left out where it is
   * @param x left edge on its blank, mm
   * @param y upper edge, mm
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record CellJson(
      int row,
      int column,
      SettingsJson settings,
      @Nullable QuantityJson dose,
      @Nullable BigDecimal chance,
      @Nullable String leftOut,
      BigDecimal x,
      BigDecimal y) {
    static CellJson of(GridPlan.Cell cell, Layout layout, QuantityKind dose) {
      return new CellJson(
          cell.row(),
          cell.column(),
          SettingsJson.of(cell.settings(), null),
          QuantityJson.of(dose, cell.dose()),
          QuantityJson.number(cell.chance()),
          cell.burned() ? null : cell.leftOut().reason(),
          QuantityJson.number(layout.x(cell.column())),
          QuantityJson.number(layout.y(cell.row())));
    }
  }

  /**
   * Which doses are tested.
   *
   * @param basis where the doses to cover come from
   * @param inside chance that the best dose is between {@code from} and {@code to}
   * @param step largest ratio between neighbouring doses
   * @param whole whether all that was to be covered is
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record CoverJson(
      Cover.Basis basis,
      @Nullable BigDecimal from,
      @Nullable BigDecimal to,
      @Nullable BigDecimal inside,
      @Nullable BigDecimal low,
      @Nullable BigDecimal high,
      @Nullable BigDecimal step,
      boolean whole) {
    static CoverJson of(Cover cover) {
      return new CoverJson(
          cover.basis(),
          QuantityJson.number(cover.from()),
          QuantityJson.number(cover.to()),
          QuantityJson.number(cover.inside()),
          QuantityJson.number(cover.low()),
          QuantityJson.number(cover.high()),
          QuantityJson.number(cover.step()),
          cover.whole());
    }
  }

  /**
   * Where a grid may lie on one blank; mm.
   *
   * @param width left out: as much as it takes
   * @param height left out: as much as it takes
   * @param sentence how the width follows from a round piece
   */
  record RoomJson(
      @Nullable BigDecimal width, @Nullable BigDecimal height, @Nullable String sentence) {
    static RoomJson of(Layout.Room room) {
      return new RoomJson(
          QuantityJson.number(room.width()), QuantityJson.number(room.height()), room.why());
    }
  }

  /** How the cells lie; mm. */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record LayoutJson(
      BigDecimal cell,
      BigDecimal gap,
      BigDecimal width,
      BigDecimal height,
      Layout.Parts parts,
      RoomJson room) {
    static LayoutJson of(Layout layout) {
      return new LayoutJson(
          QuantityJson.number(layout.cell()),
          QuantityJson.number(layout.gap()),
          QuantityJson.number(layout.width()),
          QuantityJson.number(layout.height()),
          layout.parts(),
          RoomJson.of(layout.room()));
    }
  }

  /**
   * How long it takes, as an estimate.
   *
   * @param beamOn of the time, s
   * @param acceleration left out where none is reckoned with
   * @param given whether the member said the acceleration
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record BurnJson(
      QuantityJson time,
      QuantityJson beamOn,
      @Nullable QuantityJson acceleration,
      boolean given,
      String formula) {
    static BurnJson of(BurnTime burn) {
      double acceleration = burn.motion().acceleration();
      return new BurnJson(
          QuantityJson.of(QuantityKind.DURATION, burn.seconds()),
          QuantityJson.of(QuantityKind.DURATION, burn.beam()),
          Double.isFinite(acceleration)
              ? QuantityJson.of(QuantityKind.ACCELERATION, acceleration)
              : null,
          burn.motion().given(),
          BurnTime.FORMULA);
    }
  }

  static GridPlanJson of(GridPlan plan) {
    QuantityKind dose = plan.process().doseKind().quantity();
    return new GridPlanJson(
        LaserJson.of(plan.laser()),
        SettingsJson.of(plan.base(), null),
        new AxesJson(AxisJson.of(plan.axes().across()), AxisJson.of(plan.axes().down())),
        plan.tests(),
        plan.cells().stream().map(cell -> CellJson.of(cell, plan.layout(), dose)).toList(),
        CoverJson.of(plan.cover()),
        LayoutJson.of(plan.layout()),
        BurnJson.of(plan.burn()));
  }
}
