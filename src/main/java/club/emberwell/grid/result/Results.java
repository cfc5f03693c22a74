package club.emberwell.grid.result;

import club.emberwell.grid.Grid;
import club.emberwell.grid.plan.GridPlan;
import club.emberwell.laser.Effect;
import club.emberwell.report.StoredReport;
import club.emberwell.report.reading.TrialSnapshot;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * A grid with what came of it.
 *
 * @param plan its cells with settings and dose
 * @param report that holds the results, null = none yet
 */
public record Results(Grid grid, GridPlan plan, StoredReport report) {
  /** What was judged of a cell; empty where nothing was. */
  public Optional<TrialSnapshot> of(int row, int column) {
    return judged().stream()
        .filter(trial -> trial.row() != null && trial.row() == row && trial.column() == column)
        .findFirst();
  }

  /** All cells that were judged. */
  public List<TrialSnapshot> judged() {
    return report == null ? List.of() : report.snapshot().trials();
  }

  /** The right one that alone has the highest quality. */
  public Optional<TrialSnapshot> best() {
    List<TrialSnapshot> rated =
        judged().stream()
            .filter(trial -> trial.effect() == Effect.RIGHT && trial.quality() != null)
            .sorted(Comparator.comparing(TrialSnapshot::quality).reversed())
            .toList();
    boolean alone =
        rated.size() == 1 || rated.size() > 1 && rated.get(0).quality() > rated.get(1).quality();
    return alone ? Optional.of(rated.get(0)) : Optional.empty();
  }
}
