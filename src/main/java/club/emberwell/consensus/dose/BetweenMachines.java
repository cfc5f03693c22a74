package club.emberwell.consensus.dose;

import club.emberwell.consensus.range.ConsensusLimits;
import club.emberwell.consensus.range.Group;
import club.emberwell.consensus.range.Range;
import club.emberwell.consensus.range.Spread;
import club.emberwell.search.query.Measure;
import club.emberwell.stats.Interval;
import club.emberwell.stats.RandomEffects;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * How different members' machines are: the mean ln dose of each machine's right trials, between
 * machines by Paule and Mandel with Knapp and Hartung's interval, within machines by the pooled
 * variance of repeats.
 *
 * @param measure the dose it is in, canonical unit
 * @param machines with a right trial that states a dose
 * @param trials those trials
 * @param repeats trials beyond the first of each machine: what the variance within rests on
 * @param missing why there is no estimate; empty where there is one
 */
public record BetweenMachines(
    Measure measure,
    int machines,
    int trials,
    int repeats,
    Optional<Estimate> estimate,
    Optional<String> missing) {

  /** What the interval of the middle means. */
  public static final String MIDDLE_MEANS =
      "How well the middle of all such machines is known: more members make it narrower.";

  /** What the band for the next machine means. */
  public static final String NEXT_MEANS =
      "Where one more machine, perhaps yours, is expected: it stays as wide as machines differ.";

  /** Fewest machines to compare. */
  public static final int FEWEST = 3;

  /**
   * Machines whose repeats agree to the last digit still differ by about this share from one day to
   * the next (common practice, no source); keeps a variance within from being zero.
   */
  private static final double LEAST_WITHIN = 0.01;

  /**
   * What was found.
   *
   * @param factor exp(tau): about two machines of three lie within this factor of the middle, above
   *     or below; 1 where nothing but repeats differs
   * @param within the same for repeats on one machine
   * @param middle geometric mean over machines
   * @param middleInterval 95 % interval of the middle
   * @param next 95 % prediction interval for one more machine
   */
  public record Estimate(
      double factor,
      double within,
      double middle,
      Interval middleInterval,
      Optional<Interval> next) {}

  /** Sums of one machine's ln doses about a first value, which keeps small spreads exact. */
  private static final class Machine {
    private final double first;
    private int n;
    private double sum;
    private double squares;

    Machine(double first) {
      this.first = first;
    }

    void add(double log) {
      n++;
      sum += log - first;
      squares += (log - first) * (log - first);
    }

    double mean() {
      return first + sum / n;
    }

    double squaresWithin() {
      return Math.max(0, squares - sum * sum / n);
    }
  }

  public static BetweenMachines of(Group group, Spread dose) {
    Dosed dosed = Dosed.of(group, dose);
    Map<Long, Machine> machines = new TreeMap<>();
    for (int i = 0; i < dosed.size(); i++) {
      if (dosed.right(i)) {
        double log = Math.log(dosed.doses()[i]);
        machines.computeIfAbsent(group.machine(dosed.rows()[i]), key -> new Machine(log)).add(log);
      }
    }
    int trials = machines.values().stream().mapToInt(machine -> machine.n).sum();
    int repeats = trials - machines.size();
    Optional<String> missing = missing(machines.size(), repeats);
    Optional<Estimate> estimate =
        missing.isPresent() ? Optional.empty() : estimate(machines, repeats);
    return new BetweenMachines(
        Range.doseMeasure(group.key()), machines.size(), trials, repeats, estimate, missing);
  }

  private static Optional<String> missing(int machines, int repeats) {
    if (machines < FEWEST) {
      return Optional.of(
          "Comparing machines takes " + FEWEST + " of them; there are " + machines + ".");
    }
    if (repeats < ConsensusLimits.FEWEST_REPEATS) {
      return Optional.of(
          "Too few repeats on one machine to tell machines from chance: it takes "
              + ConsensusLimits.FEWEST_REPEATS
              + ", there are "
              + repeats
              + ".");
    }
    return Optional.empty();
  }

  private static Optional<Estimate> estimate(Map<Long, Machine> machines, int repeats) {
    double pooled = machines.values().stream().mapToDouble(Machine::squaresWithin).sum() / repeats;
    double within = Math.max(pooled, LEAST_WITHIN * LEAST_WITHIN);
    double[] means = machines.values().stream().mapToDouble(Machine::mean).toArray();
    double[] variances = machines.values().stream().mapToDouble(m -> within / m.n).toArray();
    return RandomEffects.of(means, variances)
        .map(
            found ->
                new Estimate(
                    found.factor(),
                    Math.exp(Math.sqrt(within)),
                    Math.exp(found.mean()),
                    found.interval().orElseThrow().exp(),
                    found.prediction().map(Interval::exp)));
  }
}
