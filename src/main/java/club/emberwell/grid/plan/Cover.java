package club.emberwell.grid.plan;

import club.emberwell.grid.plan.GridPlan.Cell;
import club.emberwell.remark.Coded;
import java.util.List;

/**
 * Which doses a grid tests, and how finely.
 *
 * @param basis where the doses to cover come from
 * @param from lowest dose to cover, canonical unit; null where only the axes say
 * @param to highest dose to cover; null where only the axes say
 * @param inside chance that the best dose of one more member lies in the band it covers; null = not
 *     known
 * @param low lowest dose of a cell that is burned; null where no cell has a dose
 * @param high highest dose of a cell that is burned
 * @param step largest ratio between neighbouring doses; null where there are none
 */
public record Cover(
    Basis basis, Double from, Double to, Double inside, Double low, Double high, Double step) {
  private static final double ROUNDING = 1.01;

  /** Where the doses to cover come from. */
  public enum Basis implements Coded {
    RANGE("range", "where members' results were right"),
    BORROWED("borrowed", "results of work like it"),
    BY_HAND("by-hand", "chosen by hand");

    private final String code;
    private final String words;

    Basis(String code, String words) {
      this.code = code;
      this.words = words;
    }

    @Override
    public String code() {
      return code;
    }

    public String words() {
      return words;
    }
  }

  /** What the cells that are burned cover. */
  static Cover of(Basis basis, Double from, Double to, Double inside, List<Cell> cells) {
    double[] doses =
        cells.stream()
            .filter(cell -> cell.burned() && cell.dose() != null)
            .mapToDouble(Cell::dose)
            .sorted()
            .toArray();
    if (doses.length == 0) {
      return new Cover(basis, from, to, inside, null, null, null);
    }
    double step = 1;
    for (int i = 1; i < doses.length; i++) {
      step = Math.max(step, doses[i] / doses[i - 1]);
    }
    Double widest = step > 1 ? step : null;
    return new Cover(basis, from, to, inside, doses[0], doses[doses.length - 1], widest);
  }

  /** Whether all that was to be covered is, but for what rounding to the machine's limits takes. */
  public boolean whole() {
    return from == null || low != null && low <= from * ROUNDING && high * ROUNDING >= to;
  }
}
