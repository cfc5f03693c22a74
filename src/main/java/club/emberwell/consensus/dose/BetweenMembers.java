package club.emberwell.consensus.dose;

import club.emberwell.consensus.range.ConsensusLimits;
import club.emberwell.consensus.range.Group;
import club.emberwell.consensus.range.Range;
import club.emberwell.consensus.range.Spread;
import club.emberwell.search.query.Measure;
import club.emberwell.stats.Interval;
import club.emberwell.stats.RandomEffects;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * How different members are: the mean ln dose of each member's right trials, between members by
 * Paule and Mandel, within members by the pooled variance of repeats. Three machines of one member
 * are one member.
 *
 * @param measure the dose it is in, canonical unit
 * @param members with a right trial that states a dose
 * @param trials those trials
 * @param repeats trials beyond the first of each member: what the variance within rests on
 * @param missing why there is no estimate; empty where there is one
 */
public record BetweenMembers(
    Measure measure,
    int members,
    int trials,
    int repeats,
    Optional<Estimate> estimate,
    Optional<String> missing) {

  /** Fewest members to compare. */
  public static final int FEWEST = 3;

  /**
   * Trials of one member that agree to the last digit still differ by about this share from one day
   * to the next (common practice, no source); keeps a variance within from being zero.
   */
  private static final double LEAST_WITHIN = 0.01;

  /**
   * What was found.
   *
   * @param factor exp(tau): about two members of three lie within this factor of the middle, above
   *     or below; 1 where nothing but repeats differs
   * @param interval its 95 % interval
   * @param within the same for repeats of one member
   */
  public record Estimate(double factor, Interval interval, double within) {
    /** Whether members can be told apart from chance at all. */
    public boolean differ() {
      return factor > 1;
    }

    /** Whether the factor is known well enough to be said. */
    public boolean told() {
      return interval.ratio() <= ConsensusLimits.WIDEST_RATIO;
    }
  }

  /** Sums of one member's ln doses about a first value, which keeps small spreads exact. */
  private static final class Member {
    private final double first;
    private int n;
    private double sum;
    private double squares;

    Member(double first) {
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

  public static BetweenMembers of(Group group, Spread dose) {
    return of(Dosed.of(group, dose));
  }

  public static BetweenMembers of(Dosed dosed) {
    List<Member> members = new ArrayList<>();
    int last = -1;
    for (int i = 0; i < dosed.size(); i++) {
      if (dosed.right(i)) {
        double log = Math.log(dosed.doses()[i]);
        if (dosed.members()[i] != last) {
          last = dosed.members()[i];
          members.add(new Member(log));
        }
        members.get(members.size() - 1).add(log);
      }
    }
    int trials = members.stream().mapToInt(member -> member.n).sum();
    int repeats = trials - members.size();
    Optional<String> missing = missing(members.size(), repeats);
    return new BetweenMembers(
        Range.doseMeasure(dosed.group().key()),
        members.size(),
        trials,
        repeats,
        missing.isPresent() ? Optional.empty() : estimate(members, repeats),
        missing);
  }

  private static Optional<String> missing(int members, int repeats) {
    if (members < FEWEST) {
      return Optional.of(
          "It takes " + FEWEST + " members to see how they differ; there are " + members + ".");
    }
    if (repeats < ConsensusLimits.FEWEST_REPEATS) {
      return Optional.of(
          "Too few members tested more than once to see how members differ: it takes "
              + ConsensusLimits.FEWEST_REPEATS
              + " further right tests, there are "
              + repeats
              + ".");
    }
    return Optional.empty();
  }

  private static Optional<Estimate> estimate(List<Member> members, int repeats) {
    double pooled = members.stream().mapToDouble(Member::squaresWithin).sum() / repeats;
    double within = Math.max(pooled, LEAST_WITHIN * LEAST_WITHIN);
    double[] means = members.stream().mapToDouble(Member::mean).toArray();
    double[] variances = members.stream().mapToDouble(m -> within / m.n).toArray();
    return RandomEffects.of(means, variances)
        .flatMap(
            found ->
                RandomEffects.tau2Interval(means, variances)
                    .map(i -> new Estimate(found.factor(), factors(i), factor(within))));
  }

  private static Interval factors(Interval variances) {
    return new Interval(factor(variances.low()), factor(variances.high()), variances.coverage());
  }

  private static double factor(double variance) {
    return Math.exp(Math.sqrt(variance));
  }

  /** Standard deviation of ln dose between members; 0 where no difference can be seen. */
  double deviation() {
    return estimate.map(found -> Math.log(found.factor())).orElse(0.0);
  }
}
