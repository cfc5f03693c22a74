package club.emberwell.lot.drift;

import club.emberwell.laser.Effect;
import club.emberwell.laser.Laser;
import club.emberwell.laser.Process;
import club.emberwell.lot.drift.LotReportRepository.Named;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.report.reading.Filed;
import club.emberwell.report.reading.Work;
import club.emberwell.report.reading.WorkProperty;
import club.emberwell.stats.LotDrift;
import club.emberwell.stats.Quantiles;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.UUID;
import java.util.stream.Stream;

/**
 * Lots of one supplier, material, coating and colour that were burned, in their order. Each is one
 * value: of the right trials of its reports in one cell, the mean of the reports' median ln doses.
 * A lot that was burned on several machines counts in the cell in which most lots were, so that no
 * lot counts twice.
 */
record LotSeries(List<Named> lots, List<LotDrift.Lot> doses) {
  /** Whose doses can be compared with which: of one member, laser and work. */
  private record Cell(
      UUID member, Object machine, Laser laser, Process process, List<Object> work) {
    static Cell of(ReportSnapshot report) {
      Work work = report.work();
      return new Cell(
          report.author().id(),
          report.machine().id(),
          report.laser(),
          work.process(),
          Stream.<Object>of(
                  word(work, WorkProperty.MATERIAL),
                  word(work, WorkProperty.COATING),
                  word(work, WorkProperty.COLOUR),
                  word(work, WorkProperty.RESULT_COLOUR),
                  String.valueOf(work.number(WorkProperty.THICKNESS)))
              .toList());
    }

    private static String word(Work work, WorkProperty property) {
      Filed filed = work.word(property);
      return Objects.toString(filed.slug(), Objects.toString(filed.written(), ""));
    }
  }

  /**
   * @param named in their order
   * @param reports of each
   */
  static LotSeries of(List<Named> named, Map<UUID, List<ReportSnapshot>> reports) {
    List<Named> lots = new ArrayList<>();
    List<Map<Cell, Double>> judged = new ArrayList<>();
    Map<Cell, Integer> counts = new LinkedHashMap<>();
    for (Named lot : named) {
      Map<Cell, Double> cells = cells(reports.getOrDefault(lot.lot(), List.of()));
      if (!cells.isEmpty()) {
        lots.add(lot);
        judged.add(cells);
        cells.keySet().forEach(cell -> counts.merge(cell, 1, Integer::sum));
      }
    }
    List<Cell> order = List.copyOf(counts.keySet());
    Map<Cell, Integer> numbers = new HashMap<>();
    order.forEach(cell -> numbers.put(cell, numbers.size()));
    List<LotDrift.Lot> doses = new ArrayList<>();
    for (Map<Cell, Double> cells : judged) {
      Cell most =
          order.stream()
              .filter(cells::containsKey)
              .max((a, b) -> Integer.compare(counts.get(a), counts.get(b)))
              .orElseThrow();
      doses.add(new LotDrift.Lot(numbers.get(most), cells.get(most)));
    }
    return new LotSeries(lots, doses);
  }

  private static Map<Cell, Double> cells(List<ReportSnapshot> reports) {
    Map<Cell, List<Double>> medians = new LinkedHashMap<>();
    for (ReportSnapshot report : reports) {
      median(report)
          .ifPresent(
              log -> medians.computeIfAbsent(Cell.of(report), c -> new ArrayList<>()).add(log));
    }
    Map<Cell, Double> means = new LinkedHashMap<>();
    medians.forEach(
        (cell, logs) ->
            means.put(
                cell, logs.stream().mapToDouble(Double::doubleValue).average().orElseThrow()));
    return means;
  }

  private static OptionalDouble median(ReportSnapshot report) {
    double[] logs =
        report.trials().stream()
            .filter(trial -> trial.effect() == Effect.RIGHT)
            .map(trial -> trial.derived().dose(report.process().doseKind()))
            .filter(Objects::nonNull)
            .mapToDouble(Math::log)
            .toArray();
    return logs.length == 0 ? OptionalDouble.empty() : OptionalDouble.of(Quantiles.median(logs));
  }

  int at(UUID lot) {
    for (int i = 0; i < lots.size(); i++) {
      if (lots.get(i).lot().equals(lot)) {
        return i;
      }
    }
    return -1;
  }
}
