package club.emberwell.grid.sheet;

import club.emberwell.catalog.CautionMark;
import club.emberwell.grid.plan.GridPlan;
import club.emberwell.grid.plan.GridPlan.Cell;
import club.emberwell.grid.plan.GridPlanner.Planned;
import club.emberwell.laser.Amount;
import club.emberwell.laser.DoseKind;
import club.emberwell.laser.Setting;
import club.emberwell.listing.Csv;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** The plan as a table of numbers (RFC 4180), a line a cell; canonical units, named above. */
public final class GridCsv {
  private static final MathContext SURE = new MathContext(12);

  private GridCsv() {}

  /**
   * The whole table; rows and columns count from 1 as they lie, blanks too. Ids of the work's
   * cautions stand in each line, which may be cut out.
   */
  public static String of(Planned planned) {
    GridPlan plan = planned.plan();
    String cautions = CautionMark.of(planned.cautions()).map(CautionMark::coded).orElse("");
    Set<Setting> settings = plan.cells().get(0).settings().values().keySet();
    StringBuilder out = new StringBuilder();
    out.append(Csv.line(head(plan, settings)));
    for (Cell cell : plan.cells()) {
      List<String> cells = cells(plan, cell, settings);
      cells.add(cautions);
      out.append(Csv.line(cells));
    }
    return out.toString();
  }

  private static List<String> head(GridPlan plan, Set<Setting> settings) {
    List<String> head =
        new ArrayList<>(List.of("row", "column", "blank", "x (mm)", "y (mm)", "side (mm)"));
    for (Setting setting : settings) {
      Object value = plan.cells().get(0).settings().values().get(setting);
      head.add(
          value instanceof Amount amount
              ? setting.code() + " (" + amount.kind().canonicalUnit() + ")"
              : setting.code());
    }
    boolean area = plan.process().doseKind() == DoseKind.AREAL;
    head.add(area ? "dose (J/mm2)" : "dose (J/mm)");
    head.add("chance");
    head.add("left out");
    head.add("cautions");
    return head;
  }

  private static List<String> cells(GridPlan plan, Cell cell, Set<Setting> settings) {
    List<String> cells = new ArrayList<>();
    cells.add(Integer.toString(cell.row() + 1));
    cells.add(Integer.toString(cell.column() + 1));
    cells.add(Integer.toString(plan.layout().blank(cell.row(), cell.column(), plan.columns()) + 1));
    cells.add(number(plan.layout().x(cell.column())));
    cells.add(number(plan.layout().y(cell.row())));
    cells.add(number(plan.layout().cell()));
    for (Setting setting : settings) {
      Object value = cell.settings().values().get(setting);
      cells.add(value instanceof Amount amount ? number(amount.number()) : String.valueOf(value));
    }
    cells.add(cell.dose() == null ? "" : number(cell.dose()));
    cells.add(cell.chance() == null ? "" : number(cell.chance()));
    cells.add(cell.burned() ? "" : cell.leftOut().reason());
    return cells;
  }

  private static String number(double value) {
    return new BigDecimal(value).round(SURE).stripTrailingZeros().toPlainString();
  }
}
