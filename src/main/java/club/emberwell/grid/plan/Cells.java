package club.emberwell.grid.plan;

import club.emberwell.grid.plan.GridPlan.Cell;
import club.emberwell.grid.plan.GridPlan.LeftOut;
import club.emberwell.grid.reading.Axis;
import club.emberwell.laser.Laser;
import club.emberwell.laser.Process;
import club.emberwell.laser.Settings;
import club.emberwell.laser.dose.Derived;
import club.emberwell.laser.dose.Dose;
import club.emberwell.laser.dose.Plausibility;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.DoubleFunction;

/** The cells of two axes, with what a machine cannot do left out. */
final class Cells {
  /** What no machine or no light can do, with two words for it. */
  private static final Map<RemarkId, String> IMPOSSIBLE = impossible();

  private final Laser laser;
  private final Process process;
  private final DoubleFunction<Optional<Double>> chance;

  /**
   * @param chance of right at a dose
   */
  Cells(Laser laser, Process process, DoubleFunction<Optional<Double>> chance) {
    this.laser = laser;
    this.process = process;
    this.chance = chance;
  }

  private static Map<RemarkId, String> impossible() {
    Map<RemarkId, String> brief = new LinkedHashMap<>();
    brief.put(RemarkId.SPEED_ABOVE_MACHINE, "too fast");
    brief.put(RemarkId.POWER_PERCENT_ABOVE_100, "too strong");
    brief.put(RemarkId.POWER_ABOVE_RATED, "too strong");
    brief.put(RemarkId.PULSE_LONGER_THAN_PERIOD, "pulses overlap");
    brief.put(RemarkId.REPETITION_RATE_ON_CW, "no pulses");
    brief.put(RemarkId.REGIME_UNLIKE_DURATION, "other pulses");
    return brief;
  }

  /** Row by row. */
  List<Cell> of(Settings base, Axis across, Axis down) {
    List<Cell> cells = new ArrayList<>();
    for (int row = 0; row < down.size(); row++) {
      for (int column = 0; column < across.size(); column++) {
        cells.add(cell(row, column, across.at(down.at(base, row), column)));
      }
    }
    return cells;
  }

  private Cell cell(int row, int column, Settings settings) {
    Derived derived = Dose.derive(laser, process, settings);
    Double dose = derived.dose(process.doseKind());
    LeftOut leftOut = leftOut(settings, derived).orElse(null);
    Double right = dose == null || dose <= 0 ? null : chance.apply(dose).orElse(null);
    return new Cell(row, column, settings, dose, right, leftOut);
  }

  private Optional<LeftOut> leftOut(Settings settings, Derived derived) {
    for (Remark remark : Plausibility.check(laser, process, settings, derived)) {
      for (Map.Entry<RemarkId, String> known : IMPOSSIBLE.entrySet()) {
        if (remark.is(known.getKey())) {
          return Optional.of(new LeftOut(known.getValue(), remark.detail()));
        }
      }
    }
    return Optional.empty();
  }
}
