package club.emberwell.grid.sheet;

import club.emberwell.catalog.CautionMark;
import club.emberwell.grid.plan.GridPlan;
import club.emberwell.grid.plan.GridPlan.Cell;
import club.emberwell.grid.plan.GridPlanner.Planned;
import club.emberwell.grid.plan.Layout;
import club.emberwell.quantity.QuantityPrinter;
import club.emberwell.quantity.RoundNumber;
import club.emberwell.quantity.UnitPreferences;
import java.util.Locale;

/**
 * The sheet of a grid in true millimetres: what lies where on each blank, with the numbers of the
 * axes and the tag. A layout of our own; one blank below the other.
 */
public final class GridSvg {
  /** Between two blanks, mm. */
  private static final double BETWEEN = 8;

  private static final double SMALL = 2.2;
  private static final double LARGE = 3.5;

  /** What a narrow cell can hold of a number, as a share of its side. */
  private static final double LETTERS = 0.28;

  private final GridPlan plan;
  private final String tag;
  private final UnitPreferences units;
  private final StringBuilder out = new StringBuilder();

  private GridSvg(GridPlan plan, String tag, UnitPreferences units) {
    this.plan = plan;
    this.tag = tag;
    this.units = units;
  }

  /**
   * A whole document; the heaviest caution stands in it unseen, so that nothing is burned of it.
   *
   * @param tag printed on each blank; empty = none
   */
  public static String of(Planned planned, String tag, UnitPreferences units) {
    String caution = CautionMark.of(planned.cautions()).map(CautionMark::sentence).orElse("");
    return new GridSvg(planned.plan(), tag, units).drawn(caution);
  }

  /** Of the whole drawing, mm. */
  public static double height(Layout layout) {
    return layout.parts().blanks() * (layout.height() + BETWEEN) - BETWEEN;
  }

  private String drawn(String caution) {
    Layout layout = plan.layout();
    String width = mm(layout.width());
    String height = mm(height(layout));
    add(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%smm\" height=\"%smm\" viewBox=\"0 0 %s %s\" font-family=\"sans-serif\">",
        width, height, width, height);
    add("<title>Test grid %s</title>", tag);
    if (!caution.isEmpty()) {
      add("<desc>%s</desc>", caution.replace("&", "&amp;").replace("<", "&lt;"));
    }
    for (int blank = 0; blank < layout.parts().blanks(); blank++) {
      add("<g transform=\"translate(0 %s)\">", mm(blank * (layout.height() + BETWEEN)));
      blank(layout, blank);
      add("</g>");
    }
    add("</svg>");
    return out.toString();
  }

  private void blank(Layout layout, int blank) {
    add(
        "<rect x=\"0.1\" y=\"0.1\" width=\"%s\" height=\"%s\" fill=\"none\" stroke=\"#999\" stroke-width=\"0.2\" stroke-dasharray=\"1 1\"/>",
        mm(layout.width() - 0.2), mm(layout.height() - 0.2));
    AxisLabels across = AxisLabels.of(plan.axes().across(), units);
    AxisLabels down = AxisLabels.of(plan.axes().down(), units);
    for (Cell cell : plan.cells()) {
      if (layout.blank(cell.row(), cell.column(), plan.columns()) == blank) {
        double x = layout.x(cell.column());
        double y = layout.y(cell.row());
        cell(layout, cell, x, y);
        if (cell.row() % layout.parts().rows() == 0) {
          double middle = x + layout.cell() / 2;
          text("middle", middle, Layout.MARGIN + SMALL, SMALL, across.numbers().get(cell.column()));
        }
        if (cell.column() % layout.parts().columns() == 0) {
          double middle = y + layout.cell() / 2 + SMALL / 3;
          text(
              "end",
              Layout.MARGIN + Layout.LEFT - 1,
              middle,
              SMALL,
              down.numbers().get(cell.row()));
        }
      }
    }
    String units = "→ " + across.unit() + (down.unit().isEmpty() ? "" : "  ↓ " + down.unit());
    double below = layout.height() - Layout.MARGIN;
    int blanks = layout.parts().blanks();
    String which = blanks == 1 ? "" : " (%d of %d)".formatted(blank + 1, blanks);
    text("start", Layout.MARGIN, below, LARGE, tag + which);
    text("end", layout.width() - Layout.MARGIN, below, SMALL, units.strip());
  }

  private void cell(Layout layout, Cell cell, double x, double y) {
    add(
        "<rect x=\"%s\" y=\"%s\" width=\"%s\" height=\"%s\" fill=\"none\" stroke=\"#000\" stroke-width=\"0.2\"%s/>",
        mm(x),
        mm(y),
        mm(layout.cell()),
        mm(layout.cell()),
        cell.burned() ? "" : " stroke-dasharray=\"0.6 0.6\"");
    String number =
        cell.burned()
            ? cell.dose() == null
                ? ""
                : QuantityPrinter.number(
                    RoundNumber.significant(cell.dose(), GridPlan.DOSE_DIGITS), units.style())
            : "–";
    double size = Math.min(LARGE, layout.cell() * LETTERS);
    text("middle", x + layout.cell() / 2, y + layout.cell() / 2 + size / 3, size, number);
  }

  private void text(String anchor, double x, double y, double size, String text) {
    add(
        "<text x=\"%s\" y=\"%s\" font-size=\"%s\" text-anchor=\"%s\">%s</text>",
        mm(x), mm(y), mm(size), anchor, text);
  }

  private void add(String line, Object... values) {
    out.append(line.formatted(values)).append('\n');
  }

  private static String mm(double value) {
    return String.format(Locale.ROOT, "%.2f", value);
  }
}
