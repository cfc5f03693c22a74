package club.emberwell.stats;

import java.util.Arrays;
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

  /** Constant, within, between. */
  private static final int COLUMNS = 3;

  /** Means of ln dose closer than this are one. */
  private static final double SAME = 1e-9;

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
   * @param members 0, 1, 2, ... for each trial, ascending
   * @param logs ln dose of each
   * @param reached whether it had at least the grade
   */
  static Outcome of(int[] members, double[] logs, boolean[] reached) {
    int m = members.length == 0 ? 0 : members[members.length - 1] + 1;
    double[] means = means(members, logs, m);
    double mean = Arrays.stream(means).average().orElse(0);
    double[][] rows = new double[logs.length][];
    for (int i = 0; i < logs.length; i++) {
      double own = means[members[i]];
      rows[i] = new double[] {1, logs[i] - own, own - mean};
    }
    Design design = new Design(members, rows, reached);
    Optional<double[]> all = design.fit(-1, new double[COLUMNS]);
    if (all.isEmpty() || !(all.get()[1] > 0)) {
      return new Outcome(Optional.empty(), all.isPresent());
    }
    double[] beta = all.get();
    double edge = place(beta, 0);
    double squares = 0;
    for (int out = 0; out < m && !Double.isNaN(squares); out++) {
      double others = (mean - means[out]) / (m - 1);
      double without =
          design.fit(out, beta).filter(b -> b[1] > 0).map(b -> place(b, others)).orElse(Double.NaN);
      squares += (without - edge) * (without - edge);
    }
    double error = Math.sqrt(squares * (m - 1) / m);
    Optional<Double> known = Optional.of(error).filter(Double::isFinite);
    return new Outcome(
        Optional.of(new WithinBetween(mean + edge, beta[1], beta[2], known, m)), false);
  }

  /** Ln dose of even odds for a member whose mean lies {@code centre} from the mean over all. */
  private static double place(double[] beta, double centre) {
    return centre - (beta[0] + beta[2] * centre) / beta[1];
  }

  /** The rows of all members, of which one may be left out. */
  private record Design(int[] members, double[][] rows, boolean[] reached) {
    Optional<double[]> fit(int out, double[] start) {
      double[] successes = new double[rows.length];
      double[] trials = new double[rows.length];
      boolean apart = false;
      double first = Double.NaN;
      for (int i = 0; i < rows.length; i++) {
        if (members[i] != out) {
          trials[i] = 1;
          successes[i] = reached[i] ? 1 : 0;
          first = Double.isNaN(first) ? rows[i][2] : first;
          apart |= Math.abs(rows[i][2] - first) > SAME;
        }
      }
      if (apart) {
        return FirthLogit.fit(rows, successes, trials, start).map(FirthLogit.Fit::coefficients);
      }
      // all members tried the same on the mean: nothing lies between them
      double[][] within =
          Arrays.stream(rows).map(row -> new double[] {1, row[1]}).toArray(double[][]::new);
      return FirthLogit.fit(within, successes, trials, Arrays.copyOf(start, 2))
          .map(fit -> Arrays.copyOf(fit.coefficients(), COLUMNS));
    }
  }

  private static double[] means(int[] members, double[] logs, int m) {
    double[] sums = new double[m];
    int[] n = new int[m];
    for (int i = 0; i < logs.length; i++) {
      sums[members[i]] += logs[i];
      n[members[i]]++;
    }
    for (int i = 0; i < m; i++) {
      sums[i] /= n[i];
    }
    return sums;
  }

  /** 95 % interval of the edge, t with members - 1 degrees, ln dose. */
  Optional<Interval> interval() {
    return error.map(
        se -> {
          double t = TDistribution.of(members - 1).inverseSurvivalProbability((1 - LEVEL) / 2);
          return new Interval(edge - t * se, edge + t * se, LEVEL);
        });
  }

  /** Chance of at least the grade for a member who is {@code off} from the typical, ln dose. */
  double chance(double log, double off) {
    return FirthLogit.logistic(slope * (log - off - edge));
  }
}
