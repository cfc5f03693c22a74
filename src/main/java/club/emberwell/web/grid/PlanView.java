package club.emberwell.web.grid;

import club.emberwell.web.caution.CautionsView;
import java.util.List;

/**
 * A plan of a grid, ready to print.
 *
 * @param said what it comes to, the most important sentence first
 * @param settings those that stay the same
 * @param rest folded: how the time and the width are reckoned
 */
public record PlanView(
    Head head,
    List<String> said,
    Table table,
    String settings,
    List<String> rest,
    CautionsView cautions) {

  /**
   * What it is about.
   *
   * @param machine its name, or the laser in words
   * @param light what everybody in the room must be protected from
   */
  public record Head(String work, String process, String machine, String laser, String light) {}

  /**
   * The cells.
   *
   * @param corner of which unit the rows are
   * @param sides what stands where
   * @param unit of the doses
   * @param chances whether any chance is known
   * @param leftOut whether any cell is left out
   */
  public record Table(
      String corner,
      String sides,
      List<String> columns,
      List<Row> rows,
      String unit,
      boolean chances,
      boolean leftOut) {}

  /** One row of cells. */
  public record Row(String label, List<Cell> cells) {}

  /**
   * One cell.
   *
   * @param style class of its shade
   * @param text the dose; empty where it is not known or the cell is left out
   * @param small the chance, or why it is left out
   * @param name a whole sentence
   */
  public record Cell(String style, String text, String small, String name) {}
}
