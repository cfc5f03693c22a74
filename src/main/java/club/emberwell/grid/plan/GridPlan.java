package club.emberwell.grid.plan;

import club.emberwell.grid.reading.Axis;
import club.emberwell.laser.Laser;
import club.emberwell.laser.Process;
import club.emberwell.laser.Settings;
import club.emberwell.report.reading.Work;
import java.util.List;

/**
 * What a grid comes to: its cells with what is expected of them, how they lie on the blank, and how
 * long they take.
 *
 * @param base the settings that are the same in all cells
 * @param cells row by row
 */
public record GridPlan(
    Laser laser,
    Work work,
    Settings base,
    Axes axes,
    List<Cell> cells,
    Cover cover,
    Layout layout,
    BurnTime burn) {
  /** Digits of a nominal dose where many stand side by side. */
  public static final int DOSE_DIGITS = 2;

  public GridPlan {
    cells = List.copyOf(cells);
  }

  /** The columns and the rows. */
  public record Axes(Axis across, Axis down) {}

  /**
   * One test.
   *
   * @param row from 0
   * @param column from 0
   * @param settings whole
   * @param dose nominal, J/mm2 for area work, J/mm for line work; null where it cannot be known
   * @param chance that it comes out right for one more member, 0 to 1; null = not known
   * @param leftOut why it is not burned, null = it is
   */
  public record Cell(
      int row, int column, Settings settings, Double dose, Double chance, LeftOut leftOut) {
    public boolean burned() {
      return leftOut == null;
    }
  }

  /**
   * Why a cell is left out.
   *
   * @param brief two words for the cell itself: "too fast"
   * @param reason a sentence
   */
  public record LeftOut(String brief, String reason) {}

  public Process process() {
    return work.process();
  }

  public int rows() {
    return axes.down().size();
  }

  public int columns() {
    return axes.across().size();
  }

  public Cell cell(int row, int column) {
    return cells.get(row * columns() + column);
  }

  /** How many tests are burned. */
  public int tests() {
    return (int) cells.stream().filter(Cell::burned).count();
  }
}
