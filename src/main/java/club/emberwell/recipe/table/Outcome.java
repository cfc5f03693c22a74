package club.emberwell.recipe.table;

import club.emberwell.listing.Csv;
import club.emberwell.recipe.Recipe;
import club.emberwell.remark.Remark;
import java.util.ArrayList;
import java.util.List;

/**
 * What became of a table's rows, or would become of them.
 *
 * @param fitting rows that are or can be recipes
 */
public record Outcome(Table table, List<Fitting> fitting, List<Refused> refused) {
  private static final String PROBLEM = "Problem";

  /**
   * A row that fits.
   *
   * @param row its number, 1 = the first below the names
   * @param recipe as stored; null where it was only looked at
   */
  public record Fitting(int row, String name, Recipe recipe) {}

  /**
   * A row that does not.
   *
   * @param errors at the fields of a recipe
   */
  public record Refused(int row, List<Remark> errors) {
    /** In one line. */
    public String said() {
      return String.join(" ", errors.stream().map(Refused::said).toList());
    }

    private static String said(Remark remark) {
      String code = remark.field().replaceFirst("^/", "").replace('/', '.');
      return TableField.of(code)
          .map(field -> field.label() + ": " + remark.detail())
          .orElse(remark.detail());
    }
  }

  /**
   * The refused rows as a table that can be mended and read in again, with why in a last column;
   * empty where there are none.
   */
  public String toMend() {
    if (refused.isEmpty()) {
      return "";
    }
    boolean again = table.header().get(table.header().size() - 1).equals(PROBLEM);
    int own = table.header().size() - (again ? 1 : 0);
    StringBuilder text = new StringBuilder(line(table.header().subList(0, own), PROBLEM));
    for (Refused row : refused) {
      text.append(line(table.rows().get(row.row() - 1).subList(0, own), row.said()));
    }
    return text.toString();
  }

  private static String line(List<String> cells, String last) {
    List<String> all = new ArrayList<>(cells);
    all.add(last);
    return Csv.line(all);
  }
}
