package club.emberwell.consensus.dose;

import club.emberwell.consensus.range.ConsensusLimits;
import club.emberwell.consensus.range.Group;
import club.emberwell.consensus.range.Range;
import club.emberwell.consensus.range.Spread;
import club.emberwell.laser.Effect;
import club.emberwell.search.query.Measure;
import club.emberwell.stats.DoseLimit;
import club.emberwell.stats.DoseWindow;
import club.emberwell.stats.Interval;
import club.emberwell.stats.WindowEdges;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * From which dose to which dose it is right, from all three effects: {@link DoseWindow} on the
 * trials of a group.
 *
 * @param measure the dose it is in, canonical unit
 * @param edges where a right result passes an even chance; empty where no window is known
 * @param curve chances of the three effects over the dose, for a plot; empty where none is known
 * @param marks the trials themselves, for the same plot; evenly thinned where they are many
 * @param crossCheck the same edges by proportional odds, where that model has an answer
 * @param missing in sentences: what keeps it from being known better
 */
public record Window(
    Measure measure,
    DoseWindow fit,
    Counts counts,
    Optional<WindowEdges> edges,
    List<Point> curve,
    List<Mark> marks,
    Optional<Interval> crossCheck,
    List<String> missing) {

  /** The chance of a right result at the edges. */
  public static final double PROBABILITY = DoseWindow.PROBABILITY;

  /**
   * What stands behind it.
   *
   * @param members with at least one of the trials
   * @param undosed trials without a dose, left out
   * @param aside trials of members whose dose is set aside, left out
   * @param strays single trials at a dose far off the middle, left out
   */
  public record Counts(
      int tooLittle, int right, int tooMuch, int members, int undosed, int aside, int strays) {}

  /**
   * One point of the curve.
   *
   * @param observed false beyond the doses anybody tried: drawn grey
   */
  public record Point(
      double dose, double tooLittle, double right, double tooMuch, boolean observed) {}

  /**
   * One trial in the plot.
   *
   * @param stray far off and left out: drawn hollow
   */
  public record Mark(double dose, Effect effect, boolean stray) {}

  public static Window of(Group group, Spread dose) {
    Dosed dosed = Dosed.of(group, dose);
    Effect[] effects = dosed.effects();
    DoseWindow fit = DoseWindow.of(dosed.members(), dosed.doses(), effects);
    Optional<Interval> other =
        fit.state() == DoseWindow.State.KNOWN && dosed.size() <= ConsensusLimits.CROSS_CHECKED
            ? DoseWindow.crossCheck(dosed.members(), dosed.doses(), effects)
            : Optional.empty();
    Optional<WindowEdges> edges = fit.edges();
    return new Window(
        Range.doseMeasure(group.key()),
        fit,
        counts(dosed, effects),
        edges,
        curve(fit),
        marks(dosed),
        other,
        missing(fit, edges));
  }

  private static List<Mark> marks(Dosed dosed) {
    int step = 1 + dosed.size() / ConsensusLimits.MARKS;
    List<Mark> marks = new ArrayList<>();
    for (int i = 0; i < dosed.size(); i += step) {
      marks.add(new Mark(dosed.doses()[i], dosed.effect(i), false));
    }
    dosed.straying().forEach(marks::add);
    return List.copyOf(marks);
  }

  private static Counts counts(Dosed dosed, Effect[] effects) {
    int[] grades = new int[Effect.values().length];
    Arrays.stream(effects).forEach(effect -> grades[effect.ordinal()]++);
    int members = dosed.size() == 0 ? 0 : dosed.members()[dosed.size() - 1] + 1;
    return new Counts(
        grades[Effect.TOO_LITTLE.ordinal()],
        grades[Effect.RIGHT.ordinal()],
        grades[Effect.TOO_MUCH.ordinal()],
        members,
        dosed.undosed(),
        dosed.aside(),
        dosed.strays().length);
  }

  private static List<Point> curve(DoseWindow fit) {
    List<Point> points = new ArrayList<>();
    if (fit.lower().curve().isEmpty() && fit.upper().curve().isEmpty()) {
      return points;
    }
    double from = Math.log(fit.observed().low() / ConsensusLimits.CURVE_MARGIN);
    double to = Math.log(fit.observed().high() * ConsensusLimits.CURVE_MARGIN);
    int steps = ConsensusLimits.CURVE_POINTS - 1;
    for (int i = 0; i <= steps; i++) {
      double dose = Math.exp(from + (to - from) * i / steps);
      DoseWindow.Chances at = fit.at(dose).orElseThrow();
      boolean observed = fit.observed().contains(dose);
      points.add(new Point(dose, at.tooLittle(), at.right(), at.tooMuch(), observed));
    }
    return List.copyOf(points);
  }

  private static List<String> missing(DoseWindow fit, Optional<WindowEdges> edges) {
    List<String> missing = new ArrayList<>();
    switch (fit.state()) {
      case TOO_FEW_MEMBERS ->
          missing.add(
              "A window takes trials with a dose from "
                  + DoseWindow.FEWEST_MEMBERS
                  + " members; there are "
                  + fit.members()
                  + ".");
      case ALL_RIGHT ->
          missing.add(
              "All right so far: limits unknown. It takes trials that came out too little and"
                  + " too much.");
      case ONE_DOSE -> missing.add("All trials were made at one dose: limits unknown.");
      case UNORDERED ->
          missing.add("More dose did not go with more effect: something else decides here.");
      case NONE_RIGHT -> missing.add("Nothing came out right so far.");
      default -> {
        // both limits are looked at below
      }
    }
    if (fit.state() == DoseWindow.State.KNOWN || fit.state() == DoseWindow.State.NONE_RIGHT) {
      limit(fit.lower(), "lower", "too little", missing);
      limit(fit.upper(), "upper", "too much", missing);
    }
    if (fit.state() == DoseWindow.State.KNOWN && edges.isEmpty()) {
      missing.add("At no dose tried is a right result likelier than not.");
    }
    return List.copyOf(missing);
  }

  private static void limit(DoseLimit limit, String side, String grade, List<String> missing) {
    if (limit.kind() == DoseLimit.Kind.UNKNOWN) {
      missing.add("Nobody reported " + grade + ": the " + side + " limit is unknown.");
    } else if (limit.kind() == DoseLimit.Kind.GAP) {
      missing.add(
          "Trials that came out "
              + grade
              + " and the others do not overlap: the "
              + side
              + " limit lies somewhere in the gap between them.");
    }
  }
}
