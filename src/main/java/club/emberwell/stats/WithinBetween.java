package club.emberwell.stats;

import java.util.Optional;
import org.apache.commons.statistics.distribution.TDistribution;

/**
 * Where one grade becomes likelier than the one before it for a typical member, told from what
 * members changed themselves and not from how they differ: a Firth logit with two covariates, ln
 * dose minus the member's own mean of it, and that mean minus the mean over members. People report
 * near what works on their own machine, which pulls any pooled curve flat.
 *
 * <p>Sources: within and between apart, Mundlak, Econometrica 46 (1978) 69-85; interval by the
 * cluster jackknife over members, MacKinnon, Nielsen &amp; Webb, Journal of Applied Econometrics 38
 * (2023) 671-694 (both from memory).
 *
 * @param edge ln dose of the edge of a typical member
 * @param slope log odds per ln dose within a member, above 0
 * @param between the same from member to member
 * @param error standard error of {@code edge}; empty where a fit without some member has no edge
 * @param members behind it
 */
record WithinBetween(
    double edge, double slope, double between, Optional<Double> error, int members) {

  /** Level of the interval. */
  static final double LEVEL = 0.95;

  /** Up to so many members each is really left out; beyond, one step is as good (2 % at 40). */
  private static final int REFITTED = 40;

  /**
   * What came of it.
   *
   * @param fit empty where the trials determine no curve or it does not rise
   * @param falling whether there is a curve and it does not rise
   */
  record Outcome(Optional<WithinBetween> fit, boolean falling) {}

  /**
   * The fit.
   *
   * @param reached whether each trial had at least the grade
   */
  static Outcome of(MemberDoses doses, boolean[] reached) {
    Optional<double[]> all = doses.fit(reached, -1, new double[3]);
    if (all.isEmpty() || !(all.get()[1] > 0)) {
      return new Outcome(Optional.empty(), all.isPresent());
    }
    double[] beta = all.get();
    boolean few = doses.count() <= REFITTED;
    double error = few ? refitted(doses, reached, beta) : stepped(doses, reached, beta);
    WithinBetween fit =
        new WithinBetween(
            doses.mean() + place(beta, 0),
            beta[1],
            beta[2],
            Optional.of(error).filter(Double::isFinite),
            doses.count());
    return new Outcome(Optional.of(fit), false);
  }

  /** Standard error of the edge by a fit without each member; NaN where one has no edge. */
  static double refitted(MemberDoses doses, boolean[] reached, double[] beta) {
    double[][] without = new double[doses.count()][];
    for (int out = 0; out < without.length; out++) {
      without[out] = doses.fit(reached, out, beta).orElse(null);
      if (without[out] == null) {
        return Double.NaN;
      }
    }
    return jackknife(doses, beta, without);
  }

  /** The same by one step toward each of those fits. */
  static double stepped(MemberDoses doses, boolean[] reached, double[] beta) {
    return jackknife(doses, beta, doses.steps(reached, beta));
  }

  private static double jackknife(MemberDoses doses, double[] beta, double[][] without) {
    double edge = place(beta, 0);
    double squares = 0;
    for (int out = 0; out < without.length; out++) {
      if (without[out] == null || !(without[out][1] > 0)) {
        return Double.NaN;
      }
      squares += Math.pow(place(without[out], doses.shift(out)) - edge, 2);
    }
    return Math.sqrt(squares * (without.length - 1) / without.length);
  }

  /** Ln dose of even odds for a member whose mean lies {@code centre} from the mean over all. */
  private static double place(double[] beta, double centre) {
    return centre - (beta[0] + beta[2] * centre) / beta[1];
  }

  /** 95 % interval of the edge, t with members - 1 degrees, ln dose. */
  Optional<Interval> interval() {
    return error.map(
        se -> {
          double t = TDistribution.of(members - 1).inverseSurvivalProbability((1 - LEVEL) / 2);
          return new Interval(edge - t * se, edge + t * se, LEVEL);
        });
  }

  /**
   * The part of how members differ that the slope within does not hold yet, 0 to 1. Where doses are
   * spread at random a member's mean says nothing of the member, both slopes are one, and the
   * differences have flattened them already; where all report near their own, nothing lies between.
   */
  double apart() {
    return Math.max(0, Math.min(1, 1 - between / slope));
  }

  /** Chance of at least the grade for a member who is {@code off} from the typical, ln dose. */
  double chance(double log, double off) {
    return FirthLogit.logistic(slope * (log - off - edge));
  }
}
