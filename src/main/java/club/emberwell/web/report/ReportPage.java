package club.emberwell.web.report;

import club.emberwell.remark.Remark;
import club.emberwell.report.Photo;
import java.time.Instant;
import java.util.List;

/**
 * A report as its page shows it.
 *
 * @param banner what must be said of its state, or null
 * @param rows settings as written and as understood; empty for a grid
 * @param grid the trials of a grid, or null
 * @param mine whether the reader wrote it
 * @param mayEdit whether the reader may change it
 */
public record ReportPage(
    String id,
    int version,
    String work,
    String process,
    String laser,
    String machine,
    String member,
    Instant posted,
    Instant updated,
    String banner,
    String effect,
    String effectClass,
    Integer quality,
    List<String> defects,
    List<Row> rows,
    List<Derived> derived,
    Grid grid,
    List<Said> said,
    List<Remark> remarks,
    List<Danger> dangers,
    List<Photo> photos,
    List<Other> repeats,
    Other original,
    String similar,
    boolean mine,
    boolean mayEdit,
    boolean mayRepeat) {

  /** One setting. */
  public record Row(String label, String written, String read) {}

  /** A text of the author's. */
  public record Said(String label, String text) {}

  /** A computed value with how it came about. */
  public record Derived(
      String name,
      String value,
      String formula,
      List<Row> inputs,
      String source,
      List<String> caveats) {}

  /** A caution of this work. */
  public record Danger(
      boolean ban, String title, String claim, String advice, String source, boolean disputed) {}

  /** Another report. */
  public record Other(String href, String text, String effect, String effectClass) {}

  /** A grid: rows across columns, each cell with its effect. */
  public record Grid(List<String> columns, List<GridRow> rows) {}

  /** One row of a grid. */
  public record GridRow(String label, List<GridCell> cells) {}

  /** One cell; empty texts where nothing was burned. */
  public record GridCell(String settings, String dose, String effect, String effectClass) {}
}
