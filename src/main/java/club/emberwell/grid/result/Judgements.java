package club.emberwell.grid.result;

import club.emberwell.grid.plan.GridPlan;
import club.emberwell.grid.reading.WrittenGrid;
import club.emberwell.grid.result.WrittenResults.WrittenCell;
import club.emberwell.laser.Effect;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.report.reading.ReadingLimits;
import club.emberwell.report.reading.WorkProperty;
import club.emberwell.report.reading.WrittenReport;
import club.emberwell.report.reading.WrittenTrial;
import club.emberwell.report.reading.WrittenWork;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** What was sent of a grid's results, held against its plan. */
final class Judgements {
  private static final String EFFECTS = "/effects";
  private static final String BEST = "/best";

  private final WrittenResults written;
  private final GridPlan plan;
  private final List<Remark> remarks = new ArrayList<>();

  /** Row by row. */
  private final Map<Integer, Effect> effects = new TreeMap<>();

  /** Where in {@link WrittenResults#cells} a cell is spoken of. */
  private final Map<Integer, Integer> told = new HashMap<>();

  private Judgements(WrittenResults written, GridPlan plan) {
    this.written = written;
    this.plan = plan;
  }

  /**
   * Reads what was sent.
   *
   * @throws EntryRefused with the pointers of all that is at fault
   */
  static Judgements read(WrittenResults written, GridPlan plan) {
    Judgements read = new Judgements(written, plan);
    read.effects();
    if (read.remarks.isEmpty()) {
      read.cells();
      read.best();
    }
    if (!read.remarks.isEmpty()) {
      throw new EntryRefused(read.remarks);
    }
    return read;
  }

  private void error(RemarkId id, String pointer, String detail) {
    remarks.add(Remark.error(id, pointer, detail));
  }

  private void effects() {
    List<List<String>> rows = written.effects();
    if (rows == null || rows.isEmpty()) {
      error(RemarkId.REQUIRED, EFFECTS, "Say how the tests came out, row by row.");
      return;
    }
    if (rows.size() != plan.rows()) {
      String detail = "This grid has %d rows, but %d were sent.";
      error(RemarkId.MATRIX_UNLIKE_GRID, EFFECTS, detail.formatted(plan.rows(), rows.size()));
      return;
    }
    for (int row = 0; row < rows.size(); row++) {
      List<String> line = rows.get(row);
      if (line == null || line.size() != plan.columns()) {
        String detail = "This grid has %d columns, but %d values were sent.";
        int sent = line == null ? 0 : line.size();
        error(
            RemarkId.MATRIX_UNLIKE_GRID,
            EFFECTS + "/" + row,
            detail.formatted(plan.columns(), sent));
        continue;
      }
      for (int column = 0; column < line.size(); column++) {
        effect(row, column, line.get(column));
      }
    }
    if (remarks.isEmpty() && effects.isEmpty()) {
      error(RemarkId.NOTHING_JUDGED, EFFECTS, "Judge at least one test before you send.");
    }
  }

  private void effect(int row, int column, String text) {
    if (text == null || text.isBlank()) {
      return;
    }
    String at = pointer(row, column);
    GridPlan.Cell cell = plan.cell(row, column);
    if (Effect.of(text).isEmpty()) {
      String detail = "Choose one of: too-little, right, too-much. Leave out what is not judged.";
      error(RemarkId.CHOICE_UNKNOWN, at, detail);
    } else if (!cell.burned()) {
      String detail = "The plan leaves this test out: " + cell.leftOut().brief() + ".";
      error(RemarkId.TEST_LEFT_OUT, at, detail);
    } else {
      effects.put(number(row, column), Effect.of(text).get());
    }
  }

  private static String pointer(int row, int column) {
    return EFFECTS + "/" + row + "/" + column;
  }

  private int number(int row, int column) {
    return row * plan.columns() + column;
  }

  /** The number of a cell; null, with a remark, where it lies outside of the grid. */
  private Integer number(String at, Integer row, Integer column) {
    boolean inside =
        row != null
            && column != null
            && row >= 0
            && row < plan.rows()
            && column >= 0
            && column < plan.columns();
    if (!inside) {
      String detail = "This grid has rows 0 to %d and columns 0 to %d.";
      error(RemarkId.OUT_OF_RANGE, at, detail.formatted(plan.rows() - 1, plan.columns() - 1));
      return null;
    }
    return number(row, column);
  }

  private void cells() {
    List<WrittenCell> cells = written.cells() == null ? List.of() : written.cells();
    for (int i = 0; i < cells.size(); i++) {
      String at = "/cells/" + i;
      WrittenCell cell = cells.get(i);
      Integer number = cell == null ? null : number(at, cell.row(), cell.column());
      if (cell == null) {
        error(RemarkId.REQUIRED, at, "A test is missing here.");
      } else if (number != null && told.putIfAbsent(number, i) != null) {
        error(RemarkId.PLACE_TAKEN, at, "This test stands here twice.");
      } else if (number != null && !effects.containsKey(number)) {
        String detail = "Say first how this test came out.";
        error(RemarkId.NOTHING_JUDGED, pointer(cell.row(), cell.column()), detail);
      }
    }
  }

  private void best() {
    if (written.best() == null) {
      return;
    }
    Integer number = number(BEST, written.best().row(), written.best().column());
    if (number == null) {
      return;
    }
    if (effects.get(number) != Effect.RIGHT) {
      error(RemarkId.BEST_NOT_RIGHT, BEST, "The best test must be right.");
    } else if (effects.keySet().stream()
        .anyMatch(other -> !other.equals(number) && quality(other) >= quality(number))) {
      String detail =
          "Another test has the same quality or a higher one. Rate the best higher than the others.";
      error(RemarkId.BEST_NOT_HIGHEST, BEST, detail);
    }
  }

  private int quality(int number) {
    Integer given = given(number);
    if (given != null) {
      return given;
    }
    return isBest(number) ? ReadingLimits.BEST_QUALITY : 0;
  }

  private boolean isBest(int number) {
    return written.best() != null
        && number == number(written.best().row(), written.best().column());
  }

  private Integer given(int number) {
    return told.containsKey(number) ? written.cells().get(told.get(number)).quality() : null;
  }

  private List<String> defects(int number) {
    return told.containsKey(number) ? written.cells().get(told.get(number)).defects() : null;
  }

  /** The report they make: settings as they were planned. */
  WrittenReport report(WrittenGrid grid) {
    WrittenWork work = grid.work();
    if (written.notes() != null && !written.notes().isBlank()) {
      work = work.with(WorkProperty.NOTES, written.notes());
    }
    List<WrittenTrial> trials =
        effects.entrySet().stream().map(judged -> trial(grid, judged.getKey())).toList();
    return new WrittenReport(grid.machine(), grid.laser(), work, trials, null, null);
  }

  private WrittenTrial trial(WrittenGrid grid, int number) {
    int row = number / plan.columns();
    int column = number % plan.columns();
    int quality = quality(number);
    return new WrittenTrial(
        row,
        column,
        grid.cell(row, column),
        effects.get(number).code(),
        quality == 0 && given(number) == null ? null : (Integer) quality,
        defects(number));
  }

  /** What a report says of its trials, at the fields that were sent. */
  EntryRefused atFields(EntryRefused refused) {
    return new EntryRefused(
        refused.remarks().stream().map(remark -> remark.at(field(remark.field()))).toList());
  }

  private String field(String pointer) {
    String[] parts = pointer.split("/");
    if (parts.length < 3 || !parts[1].equals("trials")) {
      return pointer;
    }
    int number = List.copyOf(effects.keySet()).get(Integer.parseInt(parts[2]));
    String rest = pointer.substring(("/trials/" + parts[2]).length());
    boolean more = rest.startsWith("/quality") || rest.startsWith("/defects");
    return more && told.containsKey(number)
        ? "/cells/" + told.get(number) + rest
        : pointer(number / plan.columns(), number % plan.columns());
  }
}
