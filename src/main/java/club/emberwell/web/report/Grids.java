package club.emberwell.web.report;

import club.emberwell.catalog.Vocabulary;
import club.emberwell.laser.Effect;
import club.emberwell.laser.Setting;
import club.emberwell.laser.Settings;
import club.emberwell.laser.dose.Derived;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.report.reading.TrialSnapshot;
import club.emberwell.web.report.ReportPage.Grid;
import club.emberwell.web.report.ReportPage.GridCell;
import club.emberwell.web.report.ReportPage.GridRow;
import club.emberwell.web.report.ReportPage.Look;
import club.emberwell.web.trial.TrialText;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Lays the trials of a grid report out as they were burned. */
final class Grids {
  private static final GridCell NOTHING = new GridCell(null, -1, "", "", "");

  private final Vocabulary vocabulary;
  private final UnitPreferences reader;
  private final TrialSnapshot best;

  /** The settings that differ and that no head tells. */
  private final Set<Setting> told = EnumSet.noneOf(Setting.class);

  /** Of each trial its place among all of the report. */
  private final Map<TrialSnapshot, Integer> places = new IdentityHashMap<>();

  private Grids(List<TrialSnapshot> trials, Vocabulary vocabulary, UnitPreferences reader) {
    trials.forEach(trial -> places.put(trial, places.size()));
    this.vocabulary = vocabulary;
    this.reader = reader;
    best = best(trials);
  }

  static Grid of(ReportSnapshot report, Vocabulary vocabulary, UnitPreferences reader) {
    return new Grids(report.trials(), vocabulary, reader).laidOut(report.trials());
  }

  /** The one with the highest quality; null where two share it or none has one. */
  private static TrialSnapshot best(List<TrialSnapshot> trials) {
    List<TrialSnapshot> rated =
        trials.stream()
            .filter(trial -> trial.effect() == Effect.RIGHT && trial.quality() != null)
            .sorted(Comparator.comparing(TrialSnapshot::quality).reversed())
            .toList();
    boolean alone =
        rated.size() == 1 || rated.size() > 1 && rated.get(0).quality() > rated.get(1).quality();
    return alone ? rated.get(0) : null;
  }

  private Grid laidOut(List<TrialSnapshot> trials) {
    Map<Integer, Map<Integer, TrialSnapshot>> rows = placed(trials);
    int columns =
        rows.values().stream()
            .flatMap(row -> row.keySet().stream())
            .mapToInt(column -> column + 1)
            .max()
            .orElse(0);
    List<List<TrialSnapshot>> across =
        IntStream.range(0, columns)
            .mapToObj(
                column ->
                    rows.values().stream()
                        .map(row -> row.get(column))
                        .filter(Objects::nonNull)
                        .toList())
            .toList();
    List<List<TrialSnapshot>> down =
        rows.values().stream().map(row -> List.copyOf(row.values())).toList();
    Heads columnHeads = Heads.of(across, down, reader);
    Heads rowHeads = Heads.of(down, across, reader);
    Set<Setting> alike =
        Stream.of(Setting.values())
            .filter(setting -> trials.stream().map(t -> value(t, setting)).distinct().count() == 1)
            .collect(Collectors.toCollection(() -> EnumSet.noneOf(Setting.class)));
    told.addAll(alike);
    told.addAll(columnHeads.apart());
    told.addAll(rowHeads.apart());
    List<GridRow> cells = new ArrayList<>();
    rows.forEach(
        (number, row) ->
            cells.add(
                new GridRow(
                    rowHeads.label("Row", cells.size(), number),
                    IntStream.range(0, columns).mapToObj(c -> cell(row.get(c))).toList())));
    return new Grid(
        corner(rowHeads, columnHeads),
        words(trials.get(0), alike, reader),
        IntStream.range(0, columns).mapToObj(c -> columnHeads.label("Column", c, c)).toList(),
        cells);
  }

  private static Map<Integer, Map<Integer, TrialSnapshot>> placed(List<TrialSnapshot> trials) {
    Map<Integer, Map<Integer, TrialSnapshot>> rows = new TreeMap<>();
    int next = 0;
    for (TrialSnapshot trial : trials) {
      // trials without a place stand in one row
      int row = trial.row() == null ? 0 : trial.row();
      int column = trial.column() == null ? next++ : trial.column();
      rows.computeIfAbsent(row, r -> new TreeMap<>()).put(column, trial);
    }
    return rows;
  }

  private GridCell cell(TrialSnapshot trial) {
    if (trial == null) {
      return NOTHING;
    }
    Set<Setting> others = EnumSet.allOf(Setting.class);
    others.removeAll(told);
    String quality = trial.quality() == null ? "" : "quality " + trial.quality() + " of 5";
    return new GridCell(
        new Look(
            TrialText.shape(trial.effect()),
            trial.effect().label(),
            "cell-" + trial.effect().code(),
            trial == best),
        places.get(trial),
        TrialText.shortDose(trial.derived(), reader),
        words(trial, others, reader),
        Stream.concat(
                Stream.of(quality).filter(text -> !text.isEmpty()),
                TrialText.defects(trial, vocabulary).stream())
            .collect(Collectors.joining(", ")));
  }

  private static String words(TrialSnapshot trial, Collection<Setting> of, UnitPreferences reader) {
    Settings kept = Settings.NONE;
    for (Setting setting : of) {
      kept = kept.with(setting, trial.settings().values().get(setting));
    }
    // the watts of a percentage, and nothing of what is told elsewhere
    Derived watts = of.contains(Setting.POWER) ? trial.derived() : Derived.NOTHING;
    return TrialText.settings(
        new TrialSnapshot(null, null, kept, watts, null, null, List.of()), reader);
  }

  private static Optional<Object> value(TrialSnapshot trial, Setting setting) {
    return Optional.ofNullable(trial.settings().values().get(setting));
  }

  /** What the heads say: "Power down, speed across". */
  private static String corner(Heads rows, Heads columns) {
    List<String> said = new ArrayList<>();
    if (!rows.apart().isEmpty()) {
      said.add(rows.names() + " down");
    }
    if (!columns.apart().isEmpty()) {
      said.add(columns.names() + " across");
    }
    String text = String.join(", ", said).toLowerCase(Locale.ROOT);
    return text.isEmpty() ? "" : text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
  }

  /**
   * What tells the lines of a grid apart.
   *
   * @param apart settings that are one along each line and differ between lines
   * @param labels one for each line, empty where nothing tells it apart
   */
  private record Heads(List<Setting> apart, List<String> labels) {
    /**
     * @param others the lines the other way: where few cells are judged, a setting may look as if
     *     it went with both, and then it goes with those in which each line has its own value
     */
    static Heads of(
        List<List<TrialSnapshot>> lines, List<List<TrialSnapshot>> others, UnitPreferences reader) {
      List<Setting> apart =
          Stream.of(Setting.values())
              .filter(setting -> tellsApart(setting, lines))
              .filter(
                  setting ->
                      !tellsApart(setting, others)
                          || eachItsOwn(setting, lines)
                          || !eachItsOwn(setting, others))
              .toList();
      return new Heads(
          apart,
          lines.stream()
              .map(line -> line.isEmpty() ? "" : words(line.get(0), apart, reader))
              .toList());
    }

    private static boolean eachItsOwn(Setting setting, List<List<TrialSnapshot>> lines) {
      List<Optional<Object>> values =
          lines.stream()
              .filter(line -> !line.isEmpty())
              .map(line -> value(line.get(0), setting))
              .toList();
      return values.stream().distinct().count() == values.size();
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

    String names() {
      return apart.stream().map(Setting::label).collect(Collectors.joining(" and "));
    }

    String label(String word, int line, int number) {
      return labels.get(line).isEmpty() ? word + " " + (number + 1) : labels.get(line);
    }
  }
}
