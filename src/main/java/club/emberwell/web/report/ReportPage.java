package club.emberwell.web.report;

import club.emberwell.member.Licence;
import club.emberwell.report.photo.Photo;
import club.emberwell.web.caution.CautionsView;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * A report as its page shows it.
 *
 * @param result null for a grid
 */
public record ReportPage(
    Head head,
    Work work,
    Result result,
    Trials trials,
    Told told,
    CautionsView cautions,
    List<Photo> photos,
    Kin kin) {

  /**
   * Which report it is.
   *
   * @param title what was done to what with which laser, and how it came out
   * @param banner what must be said of its state, or null
   */
  public record Head(
      String id, String title, int version, String banner, Author author, Allowed may) {
    /** The form for a recipe with its settings. */
    public String getKeep() {
      return "/recipes/new?report=" + id;
    }
  }

  /**
   * Who wrote it.
   *
   * @param licence under which it may be used
   * @param me whether the reader did
   */
  public record Author(
      String handle, Licence licence, Instant posted, Instant updated, boolean me) {}

  /** What the reader may do. */
  public record Allowed(boolean edit, boolean repeat) {}

  /**
   * What was done on which laser.
   *
   * @param machine what its owner and its maker call the laser, or null
   */
  public record Work(String what, String process, String laser, String machine) {}

  /** How a single trial came out. */
  public record Result(String effect, String effectClass, Integer quality, List<String> defects) {}

  /**
   * With what it was done.
   *
   * @param rows settings as written and as understood; empty for a grid
   * @param derived what follows from them; empty for a grid
   * @param grid null for a single trial
   */
  public record Trials(List<Row> rows, List<Derived> derived, Grid grid) {}

  /** What its author says beside, and what was noticed in reading it. */
  public record Told(List<Said> said, List<String> noticed) {}

  /**
   * Reports that have to do with it.
   *
   * @param original which it repeats, or null
   * @param tried "Tried by 4 others: 3 right, 1 too much." or empty
   * @param similar address of the search for what others did with the same work
   */
  public record Kin(Other original, String tried, List<Other> repeats, String similar) {}

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

  /** Another report. */
  public record Other(String href, String text, String effect, String effectClass) {}

  /**
   * A grid: rows across columns, each cell with its effect.
   *
   * @param heads what the heads of rows and columns say, or empty
   * @param alike the settings that all cells have in common, or empty
   */
  public record Grid(String heads, String alike, List<String> columns, List<GridRow> rows) {
    /** Its tests, the right ones first. */
    public List<Test> getTests() {
      return rows.stream()
          .flatMap(
              row ->
                  IntStream.range(0, row.cells().size())
                      .filter(at -> row.cells().get(at).look() != null)
                      .mapToObj(at -> Test.of(row, columns.get(at), row.cells().get(at))))
          .sorted(Comparator.comparing(test -> !test.right()))
          .toList();
    }
  }

  /**
   * A test of a grid in a line.
   *
   * @param said "60 %, 200 mm/s: right"
   */
  public record Test(int trial, String said, boolean right, boolean best) {
    private static Test of(GridRow row, String column, GridCell cell) {
      String said = "%s, %s: %s%s";
      Look look = cell.look();
      return new Test(
          cell.trial(),
          said.formatted(
              row.label(),
              column,
              look.effect().toLowerCase(Locale.ROOT),
              look.best() ? ", best" : ""),
          look.style().endsWith("right"),
          look.best());
    }
  }

  /** One row of a grid. */
  public record GridRow(String label, List<GridCell> cells) {}

  /**
   * One cell.
   *
   * @param look null where nothing was burned
   * @param trial its place among those of the report
   * @param settings that neither the heads nor what is alike tell, or empty
   * @param said quality and defects, or empty
   */
  public record GridCell(Look look, int trial, String dose, String settings, String said) {
    /** What stands below its effect. */
    public List<String> getLines() {
      return Stream.of(dose, settings, said).filter(text -> !text.isEmpty()).toList();
    }
  }

  /**
   * How a cell came out.
   *
   * @param shape that tells it without colour
   * @param best whether it alone has the highest quality
   */
  public record Look(String shape, String effect, String style, boolean best) {}
}
