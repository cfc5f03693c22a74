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
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * From which dose to which dose it is right, from all three effects: {@link DoseWindow} on the
 * trials of a group.
 *
 * @param measure the dose it is in, canonical unit
 * @param curve chances of the three effects over the dose for one more member, for a plot; empty
 *     where none is known
 * @param best the dose tried at which right is likeliest; empty where there is no curve
 * @param marks the trials themselves, for the same plot; evenly thinned where they are many
 */
public record Window(
    Measure measure,
    DoseWindow fit,
    Counts counts,
    List<Point> curve,
    Optional<Best> best,
    List<Mark> marks) {

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
   * The likeliest dose.
   *
   * @param chance of right there, 0 to 1
   */
  public record Best(double dose, double chance) {
    /** Farther than this many times from the middle it is said beside it. */
    public static final double APART = 1.3;

    public boolean apartFrom(double middle) {
      return Math.max(dose / middle, middle / dose) > APART;
    }
  }

  /**
   * One trial in the plot.
   *
   * @param report number of the report it stands in
   * @param aside left out of all figures, alone or with its member: drawn hollow
   */
  public record Mark(double dose, Effect effect, long report, boolean aside) {}

  public static Window of(Group group, Spread dose) {
    Dosed dosed = Dosed.of(group, dose);
    return of(dosed, BetweenMembers.of(dosed));
  }

  /**
   * The same where both are at hand.
   *
   * @param between of the same trials
   */
  public static Window of(Dosed dosed, BetweenMembers between) {
    Effect[] effects = dosed.effects();
    double differ = between.deviation();
    DoseWindow fit = DoseWindow.of(dosed.members(), dosed.doses(), effects, differ);
    List<Point> curve = curve(fit);
    return new Window(
        Range.doseMeasure(dosed.group().key()),
        fit,
        counts(dosed, effects),
        curve,
        curve.stream()
            .filter(Point::observed)
            .max(Comparator.comparingDouble(Point::right))
            .map(point -> new Best(point.dose(), point.right())),
        marks(dosed));
  }

  /** Between too little and right. */
  public DoseLimit lower() {
    return fit.lower();
  }

  /** Between right and too much. */
  public DoseLimit upper() {
    return fit.upper();
  }

  /** The chance of right for one more member at a dose; empty where it is not known. */
  public Optional<Double> chance(double dose) {
    return fit.at(dose).map(DoseWindow.Chances::right);
  }

  private static List<Mark> marks(Dosed dosed) {
    int step = 1 + dosed.size() / ConsensusLimits.MARKS;
    List<Mark> marks = new ArrayList<>();
    for (int i = 0; i < dosed.size(); i += step) {
      marks.add(dosed.mark(dosed.rows()[i], false));
    }
    IntStream.concat(Arrays.stream(dosed.strays()), Arrays.stream(dosed.aside()))
        .filter(row -> dosed.dose(row) > 0)
        .mapToObj(row -> dosed.mark(row, true))
        .forEach(marks::add);
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
        dosed.aside().length,
        dosed.strays().length);
  }

  /** Over the doses tried and a little beyond. */
  private static List<Point> curve(DoseWindow fit) {
    if (fit.observed().isEmpty()) {
      return List.of();
    }
    Interval tried = fit.observed().get();
    double from = Math.log(tried.low() / ConsensusLimits.CURVE_MARGIN);
    double to = Math.log(tried.high() * ConsensusLimits.CURVE_MARGIN);
    int steps = ConsensusLimits.CURVE_POINTS - 1;
    return IntStream.rangeClosed(0, steps)
        .mapToDouble(i -> Math.exp(from + (to - from) * i / steps))
        .boxed()
        .flatMap(dose -> fit.at(dose).map(at -> point(dose, at, tried)).stream())
        .toList();
  }

  private static Point point(double dose, DoseWindow.Chances at, Interval tried) {
    return new Point(dose, at.tooLittle(), at.right(), at.tooMuch(), tried.contains(dose));
  }
}
