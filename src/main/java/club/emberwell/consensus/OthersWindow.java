package club.emberwell.consensus;

import club.emberwell.consensus.dose.BetweenMembers;
import club.emberwell.consensus.dose.Dosed;
import club.emberwell.consensus.dose.Window;
import club.emberwell.consensus.factor.OnThisWork;
import club.emberwell.consensus.range.Group;
import club.emberwell.consensus.range.Range;
import club.emberwell.consensus.range.Spread;
import club.emberwell.stats.DoseLimit;
import club.emberwell.stats.EdgePrior;
import club.emberwell.stats.Interval;
import java.util.Arrays;
import java.util.Optional;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * What the other members say of a work, from which the window of one machine is guessed before it
 * burned anything: its own results count only once, as results.
 *
 * @param differ how members differ
 * @param middle of their right doses, canonical unit; empty where nobody was right
 * @param factor how the machine stands to theirs
 */
public record OthersWindow(
    Window window, BetweenMembers differ, Optional<Double> middle, Optional<OnThisWork> factor) {
  /** Where no difference between members can be told, they are taken to differ by so much. */
  private static final double LEAST = 0.1;

  /** Where nobody tested twice: usual for machines of a club (own guess). */
  private static final double USUAL = 0.25;

  /** An edge nobody knows lies a factor of 2.5 from the other, give or take a factor of 1.5. */
  private static final double APART = Math.log(2.5);

  private static final double NOT_KNOWN = 0.4;

  /** Half a 95 % interval in standard errors. */
  private static final double NORMAL =
      NormalDistribution.of(0, 1).inverseSurvivalProbability(0.025);

  /**
   * @param others trials of the work without the member's own
   */
  static OthersWindow of(Group others, Optional<OnThisWork> factor) {
    Spread dose = Range.of(others).dose();
    Dosed dosed = Dosed.of(others, dose);
    BetweenMembers between = BetweenMembers.of(dosed);
    return new OthersWindow(
        Window.of(dosed, between), between, dose.quantiles().map(q -> q.median()), factor);
  }

  static Group without(Group group, long member) {
    return new Group(
        group.key(),
        group.columns(),
        Arrays.stream(group.rows()).filter(row -> group.member(row) != member).toArray());
  }

  /** Whether at least one edge is known. */
  public boolean known() {
    return window.lower().fitted() || window.upper().fitted();
  }

  /** The guess for the machine; empty where not even a dose is known. */
  public Optional<EdgePrior> prior() {
    DoseLimit low = window.lower();
    DoseLimit high = window.upper();
    boolean crossed = low.fitted() && high.fitted() && low.dose() >= high.dose();
    if (!known() || crossed) {
      return middle.map(dose -> EdgePrior.weak(Math.log(dose * times())));
    }
    double lower = low.fitted() ? Math.log(low.dose()) : Math.log(high.dose()) - APART;
    double upper = high.fitted() ? Math.log(high.dose()) : lower + APART;
    EdgePrior typical = new EdgePrior(lower, upper, error(low), error(high), deviation());
    return Optional.of(
        factor
            .map(known -> typical.moved(Math.log(known.times()), error(known.factor().interval())))
            .orElse(typical));
  }

  private double times() {
    return factor.map(OnThisWork::times).orElse(1.0);
  }

  private static double error(DoseLimit limit) {
    return Math.hypot(EdgePrior.ALONE, limit.range().map(OthersWindow::error).orElse(NOT_KNOWN));
  }

  private static double error(Interval factors) {
    return Math.log(factors.ratio()) / 2 / NORMAL;
  }

  private double deviation() {
    return differ.estimate().map(found -> Math.max(LEAST, Math.log(found.factor()))).orElse(USUAL);
  }
}
