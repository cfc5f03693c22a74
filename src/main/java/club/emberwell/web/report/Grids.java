package club.emberwell.web.report;

import club.emberwell.quantity.UnitPreferences;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.report.reading.TrialSnapshot;
import club.emberwell.web.report.ReportPage.Grid;
import club.emberwell.web.report.ReportPage.GridCell;
import club.emberwell.web.report.ReportPage.GridRow;
import club.emberwell.web.trial.TrialText;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Lays the trials of a grid report out as they were burned. */
final class Grids {
  private static final GridCell NOTHING = new GridCell("", "", "", "");

  private Grids() {}

  static Grid of(ReportSnapshot report, UnitPreferences reader) {
    Map<Integer, Map<Integer, TrialSnapshot>> rows = new TreeMap<>();
    int columns = 0;
    int next = 0;
    for (TrialSnapshot trial : report.trials()) {
      // trials without a place stand in one row
      int row = trial.row() == null ? 0 : trial.row();
      int column = trial.column() == null ? next++ : trial.column();
      rows.computeIfAbsent(row, r -> new TreeMap<>()).put(column, trial);
      columns = Math.max(columns, column + 1);
    }
    List<GridRow> cells = new ArrayList<>();
    for (Map.Entry<Integer, Map<Integer, TrialSnapshot>> row : rows.entrySet()) {
      List<GridCell> line = new ArrayList<>();
      for (int c = 0; c < columns; c++) {
        TrialSnapshot trial = row.getValue().get(c);
        line.add(trial == null ? NOTHING : cell(trial, reader));
      }
      cells.add(new GridRow("Row " + (row.getKey() + 1), line));
    }
    List<String> headings = new ArrayList<>();
    for (int c = 1; c <= columns; c++) {
      headings.add("Column " + c);
    }
    return new Grid(headings, cells);
  }

  private static GridCell cell(TrialSnapshot trial, UnitPreferences reader) {
    return new GridCell(
        TrialText.settings(trial, reader),
        TrialText.dose(trial, reader),
        trial.effect().label(),
        TrialText.effectClass(trial.effect()));
  }
}
