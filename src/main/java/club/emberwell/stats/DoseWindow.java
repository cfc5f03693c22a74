package club.emberwell.stats;

import club.emberwell.laser.Effect;
import java.util.Arrays;
import java.util.Optional;

/**
 * From which dose to which dose a result is likely right: two Firth-penalised logits on the natural
 * logarithm of the dose, P(at least right) and P(too much), whose difference is P(right).
 *
 * <p>Source: the two cumulative logits of an ordered outcome, McCullagh, JRSS B 42 (1980) 109-142,
 * fitted one by one with the penalty of {@link FirthLogit}. Each member has the same total weight,
 * and the weights sum to the trials; because standard errors of such a fit are unproven, they are
 * widened by sqrt(trials / members).
 *
 * <p>What the trials do not say is not invented: a grade nobody has reported leaves its limit
 * unknown, grades that do not overlap give the gap between them, and outside the observed doses a
 * curve is only drawn grey ({@link #observed}).
 */
public final class DoseWindow {
  /** Fewest members for a window. */
  public static final int FEWEST_MEMBERS = 3;

  /** The chance of a right result inside the window, unless another is asked for. */
  public static final double PROBABILITY = 0.5;

  /** Level of the intervals of the limits. */
  public static final double LEVEL = 0.95;

  private final State state;
  private final int trials;
  private final int members;
  private final Interval observed;
  private final DoseLimit lower;
  private final DoseLimit upper;

  private DoseWindow(State state, Counts counts, DoseLimit lower, DoseLimit upper) {
    this.state = state;
    this.trials = counts.trials;
    this.members = counts.members;
    this.observed = counts.observed;
    this.lower = lower;
    this.upper = upper;
  }

  /** What can be said of a window. */
  public enum State {
    /** Fewer than 3 members. */
    TOO_FEW_MEMBERS("too few members for a window"),
    /** No other grade yet. */
    ALL_RIGHT("all right so far: limits unknown"),
    /** No right result; the limits still say where it may lie. */
    NONE_RIGHT("nothing right so far"),
    /** Every trial at the same dose. */
    ONE_DOSE("all trials at one dose: limits unknown"),
    /** More dose does not go with more effect. */
    UNORDERED("results do not follow the dose"),
    /** At least one limit is known. */
    KNOWN("window");

    private final String words;

    State(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  /** Chances of the three grades at a dose; they sum to 1. */
  public record Chances(double tooLittle, double right, double tooMuch) {}

  /** Counts and span, kept apart because the fields of a window are all final. */
  private record Counts(int trials, int members, Interval observed) {}

  /**
   * The window of trials.
   *
   * @param memberNumbers a number for the member of each trial
   * @param doses nominal doses, positive, in any one unit: answers are in the same
   * @param effects the grade of each trial
   */
  public static DoseWindow of(int[] memberNumbers, double[] doses, Effect[] effects) {
    Checked.sameLength(memberNumbers.length, doses.length);
    Checked.sameLength(effects.length, doses.length);
    Checked.positive(doses);
    int members = Voices.count(memberNumbers);
    Interval span =
        new Interval(Arrays.stream(doses).min().orElse(0), Arrays.stream(doses).max().orElse(0), 1);
    Counts counts = new Counts(doses.length, members, span);
    if (members < FEWEST_MEMBERS) {
      return unknown(State.TOO_FEW_MEMBERS, counts);
    }
    if (Arrays.stream(effects).allMatch(effect -> effect == Effect.RIGHT)) {
      return unknown(State.ALL_RIGHT, counts);
    }
    if (span.low() == span.high()) {
      return unknown(State.ONE_DOSE, counts);
    }
    double[] weights = Voices.weights(memberNumbers);
    double widening = Math.sqrt((double) doses.length / members);
    DoseLimit lower = DoseLimit.of(doses, grades(effects, Effect.RIGHT), weights, widening);
    DoseLimit upper = DoseLimit.of(doses, grades(effects, Effect.TOO_MUCH), weights, widening);
    if (lower.falling() || upper.falling()) {
      return unknown(State.UNORDERED, counts);
    }
    boolean right = Arrays.asList(effects).contains(Effect.RIGHT);
    return new DoseWindow(right ? State.KNOWN : State.NONE_RIGHT, counts, lower, upper);
  }

  private static DoseWindow unknown(State state, Counts counts) {
    return new DoseWindow(state, counts, DoseLimit.UNKNOWN, DoseLimit.UNKNOWN);
  }

  /** Whether each trial had at least the effect. */
  private static boolean[] grades(Effect[] effects, Effect atLeast) {
    boolean[] reached = new boolean[effects.length];
    for (int i = 0; i < effects.length; i++) {
      reached[i] = effects[i].compareTo(atLeast) >= 0;
    }
    return reached;
  }

  public State state() {
    return state;
  }

  public int trials() {
    return trials;
  }

  public int members() {
    return members;
  }

  /** Smallest to largest dose tried (0 to 0 of no trials); outside it a curve is a guess. */
  public Interval observed() {
    return observed;
  }

  /** Between too little and right. */
  public DoseLimit lower() {
    return lower;
  }

  /** Between right and too much. */
  public DoseLimit upper() {
    return upper;
  }

  /**
   * The chances at a dose; empty where neither limit is known. A limit that is unknown because its
   * grade was never reported counts as far away.
   */
  public Optional<Chances> at(double dose) {
    Checked.positive(new double[] {dose});
    if (lower.curve().isEmpty() && upper.curve().isEmpty()) {
      return Optional.empty();
    }
    double atLeastRight = lower.curve().map(fit -> fit.probability(1, Math.log(dose))).orElse(1.0);
    double tooMuch = upper.curve().map(fit -> fit.probability(1, Math.log(dose))).orElse(0.0);
    double right = Math.max(0, atLeastRight - tooMuch);
    // two separate curves may cross; then nothing is left for right, and the rest is scaled to 1
    double sum = 1 - atLeastRight + right + tooMuch;
    return Optional.of(new Chances((1 - atLeastRight) / sum, right / sum, tooMuch / sum));
  }

  /** The edges at which the chance of a right result passes {@link #PROBABILITY}. */
  public Optional<WindowEdges> edges() {
    return edges(PROBABILITY);
  }

  /**
   * The edges at which the chance of a right result passes a probability; empty where no window is
   * known or no dose tried has that chance. Nothing is said beyond the doses tried.
   */
  public Optional<WindowEdges> edges(double probability) {
    Checked.level(probability);
    boolean curve = lower.curve().isPresent() || upper.curve().isPresent();
    return state == State.KNOWN && curve ? WindowEdges.of(this, probability) : Optional.empty();
  }

  /**
   * The doses at which a proportional odds model has P(too little) and P(too much) at one half:
   * another way to the same window, to compare with. Empty where that model has no finite estimate,
   * as happens often with few trials, or its edges do not ascend.
   */
  public static Optional<Interval> crossCheck(
      int[] memberNumbers, double[] doses, Effect[] effects) {
    double[] logs = Checked.logs(doses);
    double[][] rows = Arrays.stream(logs).mapToObj(x -> new double[] {x}).toArray(double[][]::new);
    int[] grades = Arrays.stream(effects).mapToInt(Effect::ordinal).toArray();
    return ProportionalOdds.fit(rows, grades, Effect.values().length, Voices.weights(memberNumbers))
        .filter(fit -> fit.coefficients()[0] > 0)
        .map(fit -> new Interval(Math.exp(fit.edge(0)), Math.exp(fit.edge(1)), Double.NaN));
  }
}
