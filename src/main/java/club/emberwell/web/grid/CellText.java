package club.emberwell.web.grid;

import club.emberwell.grid.plan.GridPlan;
import club.emberwell.grid.reading.Axis;
import club.emberwell.laser.Amount;
import club.emberwell.laser.DoseKind;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.quantity.QuantityPrinter;
import club.emberwell.quantity.UnitPreferences;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;

/** Cells and axes of a grid in words, in the reader's units. */
final class CellText {
  private final GridPlan plan;
  private final UnitPreferences reader;

  CellText(GridPlan plan, UnitPreferences reader) {
    this.plan = plan;
    this.reader = reader;
  }

  /** "23 mm/s, 60 %, 2.6 J/mm²". */
  String name(GridPlan.Cell cell) {
    String dose = dose(cell);
    return value(plan.axes().down(), cell.row())
        + ", "
        + value(plan.axes().across(), cell.column())
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
            rounded(QuantityPrinter.value(cell.dose(), doseKind(), reader)), reader.style());
  }

  /** As exactly as a nominal dose deserves where many stand side by side. */
  private static double rounded(double dose) {
    return new BigDecimal(dose).round(new MathContext(2)).doubleValue();
  }

  QuantityKind doseKind() {
    return plan.process().doseKind() == DoseKind.AREAL
        ? QuantityKind.AREAL_DOSE
        : QuantityKind.LINE_DOSE;
  }

  /** What stands over the columns. */
  List<String> columns() {
    return heads(plan.axes().across());
  }

  /** What stands beside the rows. */
  List<String> rows() {
    return heads(plan.axes().down());
  }

  /** "Speed down, power across". */
  String corner() {
    return plan.axes().down().setting().label()
        + " down, "
        + plan.axes().across().setting().label().toLowerCase(Locale.ROOT)
        + " across";
  }

  private List<String> heads(Axis axis) {
    return IntStream.range(0, axis.size()).mapToObj(place -> value(axis, place)).toList();
  }

  private String value(Axis axis, int place) {
    return axis.values().get(place) instanceof Amount amount
        ? QuantityPrinter.print(amount.number(), amount.kind(), reader)
        : axis.values().get(place) + " " + axis.setting().label().toLowerCase(Locale.ROOT);
  }
}
