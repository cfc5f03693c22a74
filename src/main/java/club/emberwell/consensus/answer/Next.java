package club.emberwell.consensus.answer;

import club.emberwell.consensus.range.Group;
import club.emberwell.laser.Effect;
import club.emberwell.laser.Laser;
import club.emberwell.laser.Process;
import club.emberwell.laser.Settings;
import club.emberwell.stats.Interval;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What to try next on a machine after results of one's own: between what was too little and what
 * was too much there, else between that and where peers were right.
 *
 * @param settings a whole, from the own trial nearest to it
 * @param dose what they give, canonical unit
 * @param tooLittle the highest dose that was too little on this machine, null where none was
 * @param tooMuch the lowest that was too much, null where none was
 * @param contradicting whether more was too little than was too much
 */
public record Next(
    Settings settings, double dose, Double tooLittle, Double tooMuch, boolean contradicting) {
  /** A dose this close to one that failed would tell nothing new (own rule, no source). */
  private static final double NEW = 1.15;

  /** How far beyond all that is known a next trial goes (own rule, no source). */
  private static final double STEP = 1.5;

  /**
   * What peers say.
   *
   * @param right the doses between which their results are right
   */
  record Known(Optional<Double> middle, Optional<Interval> right) {}

  /** Trials of one machine; empty where it has none of this work that failed, or one was right. */
  static Optional<Next> of(List<Whole> own, Laser mine, Process process, Known peers) {
    if (own.isEmpty() || own.stream().anyMatch(trial -> trial.effect() == Effect.RIGHT)) {
      return Optional.empty();
    }
    Double little = edge(own, Effect.TOO_LITTLE, Comparator.naturalOrder());
    Double much = edge(own, Effect.TOO_MUCH, Comparator.reverseOrder());
    double dose = dose(little, much, peers);
    Whole nearest =
        own.stream()
            .min(Comparator.comparingDouble(t -> Math.abs(Math.log(t.dose() / dose))))
            .orElseThrow();
    return new Aim(mine, process, dose)
        .with(nearest.settings())
        .map(
            reached ->
                new Next(
                    reached.settings(),
                    reached.dose(),
                    little,
                    much,
                    little != null && much != null && little >= much));
  }

  /** Trials of a machine that state a dose, those of one report in their order. */
  static List<Whole> trials(Group group, long machine) {
    List<Whole> own = new ArrayList<>();
    for (int row : group.rows()) {
      if (machine > 0 && group.columns().machine()[row] == machine) {
        Whole trial = Whole.of(group, row);
        if (trial.dose() > 0) {
          own.add(trial);
        }
      }
    }
    return own;
  }

  private static Double edge(List<Whole> own, Effect effect, Comparator<Double> order) {
    return own.stream()
        .filter(trial -> trial.effect() == effect)
        .map(Whole::dose)
        .max(order)
        .orElse(null);
  }

  private static double dose(Double little, Double much, Known peers) {
    if (little != null && much != null) {
      return Math.sqrt(little * much);
    }
    return little != null ? above(little, peers) : below(much, peers);
  }

  private static double above(double little, Known peers) {
    return peers
        .middle()
        .filter(middle -> middle >= little * NEW)
        .orElseGet(
            () ->
                Math.sqrt(
                    little
                        * peers
                            .right()
                            .map(Interval::high)
                            .filter(high -> high >= little * NEW * NEW)
                            .orElse(little * STEP * STEP)));
  }

  private static double below(double much, Known peers) {
    return peers
        .middle()
        .filter(middle -> middle <= much / NEW)
        .orElseGet(
            () ->
                Math.sqrt(
                    much
                        * peers
                            .right()
                            .map(Interval::low)
                            .filter(low -> low > 0 && low <= much / NEW / NEW)
                            .orElse(much / STEP / STEP)));
  }
}
