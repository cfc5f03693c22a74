package club.emberwell.web.report;

import club.emberwell.laser.Setting;
import club.emberwell.laser.Settings;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.report.reading.TrialSnapshot;
import club.emberwell.web.report.ReportPage.Grid;
import club.emberwell.web.report.ReportPage.GridCell;
import club.emberwell.web.report.ReportPage.GridRow;
import club.emberwell.web.trial.TrialText;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;

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
    List<List<TrialSnapshot>> across = new ArrayList<>();
    for (int c = 0; c < columns; c++) {
      int column = c;
      across.add(
          rows.values().stream().map(row -> row.get(column)).filter(Objects::nonNull).toList());
    }
    Heads columnHeads = Heads.of(across, reader);
    Heads rowHeads =
        Heads.of(rows.values().stream().map(row -> List.copyOf(row.values())).toList(), reader);
    List<GridRow> cells = new ArrayList<>();
    for (Map.Entry<Integer, Map<Integer, TrialSnapshot>> row : rows.entrySet()) {
      List<GridCell> line = new ArrayList<>();
      for (int c = 0; c < columns; c++) {
        TrialSnapshot trial = row.getValue().get(c);
        line.add(trial == null ? NOTHING : cell(trial, reader));
      }
      cells.add(new GridRow(rowHeads.label("Row", cells.size(), row.getKey()), line));
    }
    List<String> headings = new ArrayList<>();
    for (int c = 0; c < columns; c++) {
      headings.add(columnHeads.label("Column", c, c));
    }
    return new Grid(corner(rowHeads, columnHeads), headings, cells);
  }

  /** What the heads say: "Power down, speed across". */
  private static String corner(Heads rows, Heads columns) {
    List<String> said = new ArrayList<>();
    if (!rows.names().isEmpty()) {
      said.add(rows.names() + " down");
    }
    if (!columns.names().isEmpty()) {
      said.add(columns.names() + " across");
    }
    String text = String.join(", ", said).toLowerCase(Locale.ROOT);
    return text.isEmpty() ? "" : text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
  }

  /**
   * What tells the lines of a grid apart: settings that are one along each line and differ between
   * lines.
   *
   * @param names of those settings
   * @param labels one for each line, empty where nothing tells it apart
   */
  private record Heads(String names, List<String> labels) {
    static Heads of(List<List<TrialSnapshot>> lines, UnitPreferences reader) {
      List<Setting> apart =
          Stream.of(Setting.values()).filter(setting -> tellsApart(setting, lines)).toList();
      return new Heads(
          apart.stream().map(Setting::label).collect(Collectors.joining(" and ")),
          lines.stream()
              .map(
                  line ->
                      line.isEmpty()
                          ? ""
                          : TrialText.plain(only(line.get(0).settings(), apart), reader))
              .toList());
    }

    private static boolean tellsApart(Setting setting, List<List<TrialSnapshot>> lines) {
      boolean steady =
          lines.stream()
              .allMatch(line -> line.stream().map(t -> value(t, setting)).distinct().count() <= 1);
      long different =
          lines.stream()
              .flatMap(line -> line.stream().limit(1))
              .map(trial -> value(trial, setting))
              .distinct()
              .count();
      return steady && different > 1;
    }

    private static Optional<Object> value(TrialSnapshot trial, Setting setting) {
      return Optional.ofNullable(trial.settings().values().get(setting));
    }

    private static Settings only(Settings settings, List<Setting> kept) {
      Settings found = Settings.NONE;
      for (Setting setting : kept) {
        found = found.with(setting, settings.values().get(setting));
      }
      return found;
    }

    String label(String word, int line, int number) {
      return labels.get(line).isEmpty() ? word + " " + (number + 1) : labels.get(line);
    }
  }

  private static GridCell cell(TrialSnapshot trial, UnitPreferences reader) {
    return new GridCell(
        TrialText.settings(trial, reader),
        TrialText.dose(trial, reader),
        trial.effect().label(),
        TrialText.effectClass(trial.effect()));
  }
}
