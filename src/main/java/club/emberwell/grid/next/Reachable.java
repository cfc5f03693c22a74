package club.emberwell.grid.next;

import club.emberwell.grid.plan.GridPlan;
import club.emberwell.laser.Amount;
import club.emberwell.laser.Setting;
import club.emberwell.laser.Settings;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.quantity.RoundNumber;
import club.emberwell.stats.Interval;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * The doses that a machine can be set to with one of the settings of a grid and any speed: the dose
 * of a setting goes with 1 / speed. Speeds are round numbers.
 *
 * @param from the cell whose other settings are kept
 * @param speeds mm/s, ascending
 */
record Reachable(GridPlan.Cell from, List<Double> speeds) {
  /** Neighbouring speeds lie at most this share apart (own rule, no source). */
  private static final double SHARE = 0.05;

  private static final int MOST = 60;

  /**
   * Of the cell whose speeds reach most of the doses, among those the one nearest to a dose.
   *
   * @param doses wanted
   * @param near a dose in the middle of them
   */
  static Optional<Reachable> of(GridPlan plan, Interval doses, double near) {
    return plan.cells().stream()
        .filter(GridPlan.Cell::burned)
        .filter(cell -> cell.dose() != null && cell.dose() > 0)
        .filter(cell -> cell.settings().speedMmS() != null && cell.settings().speedMmS() > 0)
        .sorted(Comparator.comparingDouble(cell -> Math.abs(Math.log(cell.dose() / near))))
        .map(cell -> new Reachable(cell, speeds(cell, doses, plan.laser().maxSpeedMmS())))
        .filter(reachable -> reachable.speeds().size() > 0)
        // the first of several that reach as far is the nearest one
        .max(Comparator.comparingDouble(Reachable::reach));
  }

  private double reach() {
    return Math.round(Math.log(speeds.get(speeds.size() - 1) / speeds.get(0)) / SHARE);
  }

  private static List<Double> speeds(GridPlan.Cell cell, Interval doses, Double top) {
    double most = cell.settings().speedMmS() * cell.dose() / doses.low();
    double least = cell.settings().speedMmS() * cell.dose() / doses.high();
    List<Double> speeds = new ArrayList<>();
    double limit = top == null ? most : Math.min(most, top);
    double speed = rounded(least);
    while (speed <= limit * (1 + SHARE / 10) && speeds.size() < MOST) {
      speeds.add(speed);
      speed = rounded(speed + RoundNumber.step(speed * SHARE));
    }
    return speeds;
  }

  private static double rounded(double speed) {
    return RoundNumber.near(speed, speed * SHARE);
  }

  double dose(double speed) {
    return from.dose() * from.settings().speedMmS() / speed;
  }

  Settings settings(double speed) {
    return from.settings().with(Setting.SPEED, new Amount(QuantityKind.SPEED, speed));
  }
}
