package club.emberwell.consensus.answer;

import club.emberwell.consensus.range.Group;
import club.emberwell.laser.dose.Comparison;
import club.emberwell.laser.dose.Transfer;
import club.emberwell.search.column.TrialColumns;
import club.emberwell.search.query.Measure;
import club.emberwell.stats.Quantiles;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.IntToDoubleFunction;

/** The middles over voices of what pulsed work must match before its dose. */
final class PulseMedians {
  private PulseMedians() {}

  /** The comparisons of an outcome with peers' medians in place of one peer's values. */
  static List<Comparison> beside(Group group, Transfer.Outcome outcome) {
    TrialColumns columns = group.columns();
    double[] rate = columns.values(Measure.REPETITION_RATE);
    double[] speed = columns.values(Measure.SPEED);
    double[] beam = columns.values(Measure.BEAM_DIAMETER);
    double[] spacing = columns.values(Measure.LINE_SPACING);
    // d f / v: um x kHz / (mm/s) is a bare number
    IntToDoubleFunction perSpot = row -> beam[row] * rate[row] / speed[row];
    Map<String, IntToDoubleFunction> medians =
        Map.of(
            "average power", row -> columns.values(Measure.POWER_W)[row],
            "speed", row -> speed[row],
            "energy per area (dose, nominal)", row -> columns.values(Measure.AREAL_DOSE)[row],
            "energy per length (line dose, nominal)", row -> columns.values(Measure.LINE_DOSE)[row],
            "beam diameter at focus", row -> beam[row],
            "peak fluence", row -> columns.values(Measure.PEAK_FLUENCE)[row],
            "pulses per spot", perSpot,
            "effective pulses per place",
                row -> Math.PI / 4 * perSpot.applyAsDouble(row) * beam[row] / (1000 * spacing[row]),
            "pulse duration", row -> columns.values(Measure.PULSE_DURATION)[row],
            "pulse overlap", row -> 1 - 1 / perSpot.applyAsDouble(row));
    List<Comparison> beside = new ArrayList<>();
    for (Comparison one : outcome.sideBySide()) {
      IntToDoubleFunction of = medians.get(one.name());
      beside.add(
          of == null ? one : new Comparison(one.name(), one.unit(), median(group, of), one.to()));
    }
    return List.copyOf(beside);
  }

  /** Median over members of the median of their right trials; null where nobody states it. */
  private static Double median(Group group, IntToDoubleFunction of) {
    Map<Long, List<Double>> own = new TreeMap<>();
    for (int row : group.rows()) {
      double value = of.applyAsDouble(row);
      if (group.right(row) && Double.isFinite(value)) {
        own.computeIfAbsent(group.member(row), key -> new ArrayList<>()).add(value);
      }
    }
    double[] voices = own.values().stream().mapToDouble(Quantiles::median).toArray();
    return voices.length == 0 ? null : Double.valueOf(Quantiles.median(voices));
  }
}
