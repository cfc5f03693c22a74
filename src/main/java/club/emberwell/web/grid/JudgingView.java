package club.emberwell.web.grid;

import club.emberwell.grid.photo.GridPhoto;
import club.emberwell.grid.photo.GridPhotos;
import club.emberwell.grid.photo.PhotoPlan;
import club.emberwell.grid.plan.GridPlan;
import club.emberwell.grid.result.Results;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.report.reading.WrittenWork;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The page on which a grid is judged.
 *
 * @param table the cells
 * @param photo of the grid, null = none
 */
record JudgingView(Head head, Form form, Table table, Photo photo) {
  /** What has something to correct stands open. */
  public boolean isDetailsOpen() {
    return table.rows().stream()
        .flatMap(row -> row.cells().stream())
        .filter(cell -> cell.effect() != null)
        .anyMatch(cell -> cell.quality().isFailed() || cell.defects().isFailed());
  }

  /**
   * Which grid it is.
   *
   * @param report address of what was posted, null = nothing yet
   * @param work as written, whose caution stands there
   */
  record Head(String id, String name, String report, int judged, int tests, WrittenWork work) {}

  /** Rows across columns. */
  record Table(String corner, List<String> columns, List<Row> rows) {}

  /** One row. */
  record Row(String label, List<Cell> cells) {}

  /**
   * One cell.
   *
   * @param at row and column with a dot between
   * @param name a whole sentence
   * @param why it is left out, null = it is burned
   * @param effect the field; null where it is left out
   * @param crop which part of the flat photo shows it, null = none does
   */
  record Cell(
      String at,
      String name,
      String dose,
      String why,
      Field effect,
      Field quality,
      Field defects,
      String crop) {}

  /**
   * The photo as if taken from straight above.
   *
   * @param flat its address, null where the corners are not marked
   * @param shown whether it stands with the report already
   */
  record Photo(String flat, double width, double height, boolean shown) {
    static Photo of(GridPhoto photo, PhotoPlan lying) {
      return new Photo(
          photo.corners() == null
              ? null
              : "/grids/%s/photo/flat.jpg?v=%s"
                  .formatted(photo.grid(), Integer.toHexString(photo.hashCode())),
          lying.width(),
          lying.height(),
          photo.shown() != null);
    }
  }

  static JudgingView of(
      Results results, Form form, Optional<GridPhoto> photo, UnitPreferences reader) {
    GridPlan plan = results.plan();
    PhotoPlan lying = GridPhotos.lying(plan);
    boolean flat = photo.filter(p -> p.corners() != null).isPresent();
    CellText text = new CellText(plan, reader);
    List<Row> rows = new ArrayList<>();
    for (int r = 0; r < plan.rows(); r++) {
      List<Cell> cells = new ArrayList<>();
      for (int c = 0; c < plan.columns(); c++) {
        cells.add(cell(plan.cell(r, c), form, text, flat ? lying.crop(r, c) : null));
      }
      rows.add(new Row(text.rows().get(r), cells));
    }
    return new JudgingView(
        new Head(
            results.grid().id().toString(),
            results.grid().name(),
            results.report() == null ? null : "/reports/" + results.report().snapshot().id(),
            results.judged().size(),
            plan.tests(),
            results.grid().written().work()),
        form,
        new Table(text.corner(), text.columns(), rows),
        photo.map(p -> Photo.of(p, lying)).orElse(null));
  }

  private static Cell cell(GridPlan.Cell cell, Form form, CellText text, String crop) {
    String at = cell.row() + "." + cell.column();
    return new Cell(
        at,
        text.name(cell),
        text.bareDose(cell),
        cell.burned() ? null : cell.leftOut().reason(),
        form.find(ResultForm.EFFECT + at).orElse(null),
        form.find(ResultForm.QUALITY + at).orElse(null),
        form.find(ResultForm.DEFECTS + at).orElse(null),
        crop);
  }
}
