package club.emberwell.stats;

import club.emberwell.laser.Effect;
import java.util.Arrays;
import java.util.Optional;
import java.util.stream.Stream;
import org.hipparchus.analysis.integration.gauss.GaussIntegrator;
import org.hipparchus.analysis.integration.gauss.GaussIntegratorFactory;

/**
 * From which dose to which dose a result is likely right: an edge between too little and right, and
 * one between right and too much, each by {@link WithinBetween}; and the chance of right for one
 * more member, whose own edges lie a normal deviation of ln dose away from those of a typical one.
 *
 * <p>What the trials do not say is not invented: see {@link DoseLimit.Kind}.
 */
public final class DoseWindow {
  /** Fewest members for a window. */
  public static final int FEWEST_MEMBERS = 3;

  /** Fewest trials beyond an edge, and fewest members who made them. */
  public static final int FEWEST_BEYOND = 3;

  public static final int FEWEST_MEMBERS_BEYOND = 2;

  /** How far beyond what was right, or beyond a rough edge, a test is proposed (own rule). */
  private static final double STEP = 1.25;

  /** Over how members differ, normal: the rule of Gauss and Hermite. */
  private static final int NODES = 15;

  private static final GaussIntegrator NORMAL = new GaussIntegratorFactory().hermite(NODES);

  private final State state;
  private final Trials trials;
  private final Side lower;
  private final Side upper;
  private final double differ;

  private DoseWindow(State state, Trials trials, Side lower, Side upper, double differ) {
    this.state = state;
    this.trials = trials;
    this.lower = lower;
    this.upper = upper;
    this.differ = differ;
  }

  /** What can be said of a window. */
  public enum State {
    /** Fewer than 3 members. */
    TOO_FEW_MEMBERS,
    /** No other grade yet. */
    ALL_RIGHT,
    /** No right result. */
    NONE_RIGHT,
    /** Within members more dose does not go with more effect. */
    UNORDERED,
    /** Neither edge is known yet. */
    NOT_KNOWN,
    /** At least one edge is known. */
    KNOWN
  }

  /** Chances of the three grades at a dose; they sum to 1. */
  public record Chances(double tooLittle, double right, double tooMuch) {}

  /** One edge and the fit behind it; without a fit its chance is known only if none was tried. */
  private record Side(DoseLimit limit, Optional<WithinBetween> fit, boolean falling) {
    static final Side NOTHING = new Side(DoseLimit.notKnown(Double.NaN), Optional.empty(), false);

    boolean drawn(Trials trials, double log, int sign) {
      return fit.isPresent()
          || limit.kind() == DoseLimit.Kind.NOT_TRIED
              && sign * log <= sign * Trials.furthest(trials.logs(), sign);
    }
  }

  /** The trials, members 0, 1, 2, ... ascending, doses as natural logarithms. */
  private record Trials(int[] members, double[] logs, Effect[] effects) {
    int count() {
      return members.length == 0 ? 0 : members[members.length - 1] + 1;
    }

    double[] of(Effect effect) {
      double[] found = new double[logs.length];
      int n = 0;
      for (int i = 0; i < logs.length; i++) {
        if (effects[i] == effect) {
          found[n++] = logs[i];
        }
      }
      return Arrays.copyOf(found, n);
    }

    boolean[] reached(Effect atLeast) {
      boolean[] reached = new boolean[effects.length];
      for (int i = 0; i < effects.length; i++) {
        reached[i] = effects[i].compareTo(atLeast) >= 0;
      }
      return reached;
    }

    /** Whether enough trials of enough members lie beyond a place, {@code sign} saying where. */
    boolean beyond(double edge, int sign) {
      int n = 0;
      int by = 0;
      int last = -1;
      for (int i = 0; i < logs.length; i++) {
        if (sign * (logs[i] - edge) > 0) {
          n++;
          by += members[i] == last ? 0 : 1;
          last = members[i];
        }
      }
      return n >= FEWEST_BEYOND && by >= FEWEST_MEMBERS_BEYOND;
    }

    /** Furthest to one side. */
    static double furthest(double[] logs, int sign) {
      return sign * Arrays.stream(logs).map(x -> sign * x).max().orElse(Double.NaN);
    }
  }

  /**
   * The window of trials.
   *
   * @param members 0, 1, 2, ... for the member of each trial, ascending
   * @param doses nominal doses, positive, in any one unit: answers are in the same
   * @param effects the grade of each trial
   * @param differ by how much members differ, standard deviation of ln dose
   */
  public static DoseWindow of(int[] members, double[] doses, Effect[] effects, double differ) {
    Checked.sameLength(members.length, doses.length);
    Checked.sameLength(effects.length, doses.length);
    Trials trials = new Trials(members, Checked.logs(doses), effects);
    if (trials.count() < FEWEST_MEMBERS) {
      return new DoseWindow(State.TOO_FEW_MEMBERS, trials, Side.NOTHING, Side.NOTHING, differ);
    }
    MemberDoses set = new MemberDoses(members, trials.logs());
    Side lower = side(trials, set, Effect.TOO_LITTLE, Effect.RIGHT, -1);
    Side upper = side(trials, set, Effect.TOO_MUCH, Effect.TOO_MUCH, 1);
    double apart =
        Stream.of(lower, upper)
            .flatMap(side -> side.fit().stream())
            .mapToDouble(WithinBetween::apart)
            .average()
            .orElse(0);
    return new DoseWindow(
        state(trials, lower, upper), trials, lower, upper, differ * Math.sqrt(apart));
  }

  private static State state(Trials trials, Side lower, Side upper) {
    int right = trials.of(Effect.RIGHT).length;
    if (right == trials.logs().length) {
      return State.ALL_RIGHT;
    }
    if (right == 0) {
      return State.NONE_RIGHT;
    }
    if (lower.limit().fitted() || upper.limit().fitted()) {
      return State.KNOWN;
    }
    return lower.falling() || upper.falling() ? State.UNORDERED : State.NOT_KNOWN;
  }

  /**
   * One edge.
   *
   * @param beyond the grade on its far side
   * @param atLeast the grade from which on a trial lies above it
   * @param sign where the far side is
   */
  private static Side side(
      Trials trials, MemberDoses set, Effect beyond, Effect atLeast, int sign) {
    double[] right = trials.of(Effect.RIGHT);
    double[] far = trials.of(beyond);
    double last = Trials.furthest(right, sign);
    if (far.length == 0 && !(sign * (Trials.furthest(trials.logs(), sign) - last) > 0)) {
      return new Side(DoseLimit.NOT_TRIED, Optional.empty(), false);
    }
    if (far.length == 0 || right.length == 0) {
      double next = far.length == 0 ? last + sign * Math.log(STEP) : Double.NaN;
      return new Side(DoseLimit.notKnown(Math.exp(next)), Optional.empty(), false);
    }
    WithinBetween.Outcome outcome = WithinBetween.of(set, trials.reached(atLeast));
    Optional<WithinBetween> fit = outcome.fit();
    Optional<Interval> range =
        fit.filter(f -> trials.beyond(f.edge(), sign))
            .flatMap(WithinBetween::interval)
            .map(found -> withGap(found, Trials.furthest(far, -sign), last, sign));
    if (range.isPresent()) {
      double edge = Math.exp(fit.get().edge());
      return new Side(DoseLimit.known(edge, range.get().exp(), trials.count()), fit, false);
    }
    double between = (Quantiles.median(far) + Quantiles.median(right)) / 2;
    double next = fit.map(f -> f.edge() + sign * Math.log(STEP)).orElse(between);
    return new Side(DoseLimit.notKnown(Math.exp(next)), fit, outcome.falling());
  }

  /**
   * Where two grades do not overlap at all the edge may lie anywhere between them.
   *
   * @param far the nearest trial of the grade beyond
   * @param right the nearest right one
   */
  private static Interval withGap(Interval found, double far, double right, int sign) {
    return sign * (far - right) > 0
        ? new Interval(
            Math.min(found.low(), Math.min(far, right)),
            Math.max(found.high(), Math.max(far, right)),
            found.coverage())
        : found;
  }

  public State state() {
    return state;
  }

  public int members() {
    return trials.count();
  }

  /** Smallest to largest dose tried; outside it a curve is a guess. Empty of no trials. */
  public Optional<Interval> observed() {
    double[] logs = trials.logs();
    return logs.length == 0
        ? Optional.empty()
        : Optional.of(new Interval(Trials.furthest(logs, -1), Trials.furthest(logs, 1), 1).exp());
  }

  /** Between too little and right. */
  public DoseLimit lower() {
    return lower.limit();
  }

  /** Between right and too much. */
  public DoseLimit upper() {
    return upper.limit();
  }

  /**
   * The chances of one more member at a dose. Empty where neither edge has a curve, or one that was
   * tried has none. An edge on whose far side nobody tried anything counts as far away, and nothing
   * is said beyond the doses tried there.
   */
  public Optional<Chances> at(double dose) {
    Checked.positive(new double[] {dose});
    boolean curve = lower.fit().isPresent() || upper.fit().isPresent();
    double log = Math.log(dose);
    if (!curve || !lower.drawn(trials, log, -1) || !upper.drawn(trials, log, 1)) {
      return Optional.empty();
    }
    double right = 0;
    double tooMuch = 0;
    for (int i = 0; i < NODES; i++) {
      double off = Math.sqrt(2) * differ * NORMAL.getPoint(i);
      double weight = NORMAL.getWeight(i) / Math.sqrt(Math.PI);
      double passed = passed(log, off);
      tooMuch += weight * passed;
      right += weight * Math.max(0, reached(log, off) - passed);
    }
    return Optional.of(new Chances(Math.max(0, 1 - right - tooMuch), right, tooMuch));
  }

  private double reached(double log, double off) {
    return lower.fit().map(fit -> fit.chance(log, off)).orElse(1.0);
  }

  private double passed(double log, double off) {
    return upper.fit().map(fit -> fit.chance(log, off)).orElse(0.0);
  }
}
