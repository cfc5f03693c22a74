package club.emberwell.stats;

import java.util.Optional;
import org.apache.commons.statistics.distribution.TDistribution;

/**
 * How many times more one group needs than another: the ratio of geometric means, with a t interval
 * on the logarithms. Source: Student's paired t, and Welch, Biometrika 34 (1947) 28-35, for
 * unpaired groups; as R's t.test on logs.
 *
 * @param kind whether members who did both were compared with themselves
 * @param n pairs, or members in both groups together
 * @param ratio first over second
 * @param interval 95 % interval of the ratio
 * @param degrees degrees of freedom
 * @param pValue two-sided chance of a ratio as far from 1 where there is no difference
 */
public record Ratio(
    Kind kind, int n, double ratio, Interval interval, double degrees, double pValue) {

  /** Level of the interval. */
  public static final double LEVEL = 0.95;

  /** Fewest pairs. */
  public static final int FEWEST_PAIRS = 3;

  /** Fewest members in each group of an unpaired comparison. */
  public static final int FEWEST_EACH = 2;

  /** How the groups were compared. */
  public enum Kind {
    /** Within members who did both. */
    PAIRED,
    /** Between different members: weaker, and to be marked as weaker. */
    UNPAIRED
  }

  /**
   * Ratio within members.
   *
   * @param first one positive value of each member
   * @param second the same members' other values
   * @return empty below 3 pairs
   */
  public static Optional<Ratio> paired(double[] first, double[] second) {
    Checked.sameLength(first.length, second.length);
    double[] differences = Checked.logs(first);
    double[] subtrahends = Checked.logs(second);
    int n = differences.length;
    for (int i = 0; i < n; i++) {
      differences[i] -= subtrahends[i];
    }
    if (n < FEWEST_PAIRS) {
      return Optional.empty();
    }
    double error = Summary.standardDeviation(differences) / Math.sqrt(n);
    return Optional.of(of(Kind.PAIRED, n, Summary.mean(differences), error, n - 1));
  }

  /**
   * Ratio between groups of different members.
   *
   * @return empty where a group has fewer than 2
   */
  public static Optional<Ratio> unpaired(double[] first, double[] second) {
    double[] a = Checked.logs(first);
    double[] b = Checked.logs(second);
    if (a.length < FEWEST_EACH || b.length < FEWEST_EACH) {
      return Optional.empty();
    }
    double va = Math.pow(Summary.standardDeviation(a), 2) / a.length;
    double vb = Math.pow(Summary.standardDeviation(b), 2) / b.length;
    double variance = va + vb;
    double degrees =
        variance == 0
            ? a.length + b.length - 2
            : variance * variance / (va * va / (a.length - 1) + vb * vb / (b.length - 1));
    double difference = Summary.mean(a) - Summary.mean(b);
    int n = a.length + b.length;
    return Optional.of(of(Kind.UNPAIRED, n, difference, Math.sqrt(variance), degrees));
  }

  private static Ratio of(Kind kind, int n, double difference, double error, double degrees) {
    TDistribution t = TDistribution.of(degrees);
    double reach = t.inverseSurvivalProbability((1 - LEVEL) / 2) * error;
    Interval interval = new Interval(difference - reach, difference + reach, LEVEL).exp();
    double p = 2 * t.survivalProbability(Math.abs(difference) / error);
    // no spread at all: the groups are equal or they are not
    double pValue = error > 0 ? p : difference == 0 ? 1 : 0;
    return new Ratio(kind, n, Math.exp(difference), interval, degrees, pValue);
  }
}
