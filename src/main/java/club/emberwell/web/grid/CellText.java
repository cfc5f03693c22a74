package club.emberwell.web.grid;

import club.emberwell.grid.plan.GridPlan;
import club.emberwell.grid.sheet.AxisLabels;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.quantity.QuantityPrinter;
import club.emberwell.quantity.RoundNumber;
import club.emberwell.quantity.UnitPreferences;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;

/** Cells and axes of a grid in words, in the reader's units. */
final class CellText {
  private final GridPlan plan;
  private final UnitPreferences reader;
  private final AxisLabels across;
  private final AxisLabels down;

  CellText(GridPlan plan, UnitPreferences reader) {
    this.plan = plan;
    this.reader = reader;
    across = AxisLabels.of(plan.axes().across(), reader);
    down = AxisLabels.of(plan.axes().down(), reader);
  }

  /** "23 mm/s, 60 %, 2.6 J/mm²". */
  String name(GridPlan.Cell cell) {
    String dose = dose(cell);
    return down.at(cell.row())
        + ", "
        + across.at(cell.column())
        + (dose.isEmpty() ? "" : ", " + dose);
  }

  /** "2.6 J/mm²", or empty where it cannot be known. */
  String dose(GridPlan.Cell cell) {
    return cell.dose() == null
        ? ""
        : bareDose(cell) + " " + QuantityPrinter.unitLabel(doseKind(), reader);
  }

  /** "2.6". */
  String bareDose(GridPlan.Cell cell) {
    return cell.dose() == null
        ? ""
        : QuantityPrinter.number(
            RoundNumber.significant(
                QuantityPrinter.value(cell.dose(), doseKind(), reader), GridPlan.DOSE_DIGITS),
            reader.style());
  }

  QuantityKind doseKind() {
    return plan.process().doseKind().quantity();
  }

  /** What stands over the columns. */
  List<String> columns() {
    return IntStream.range(0, plan.columns()).mapToObj(across::at).toList();
  }

  /** What stands beside the rows. */
  List<String> rows() {
    return IntStream.range(0, plan.rows()).mapToObj(down::at).toList();
  }

  /** "Speed down, power across". */
  String corner() {
    return down.name() + " down, " + across.name().toLowerCase(Locale.ROOT) + " across";
  }
}
