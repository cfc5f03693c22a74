package club.emberwell.stats;

import java.util.Arrays;
import java.util.Optional;

/**
 * Where one right trial of a new member will land, from all right trials of the members there are,
 * each weighing 1 / (right trials of its member). Sorted, a trial stands at (weight before it +
 * half its own + 1/2) / (m + 1) of m members; between trials a quantile is interpolated, and none
 * lies beyond the least or largest. With one trial a member these are quantiles of type 6, and the
 * least and largest hold the next value with (m - 1) / (m + 1) whatever the continuous
 * distribution, because it is equally likely to fall in any of the m + 1 gaps.
 *
 * <p>Source of the latter: Wilks, "Determination of sample sizes for setting tolerance limits",
 * Annals of Mathematical Statistics 12 (1941) 91-96; David &amp; Nagaraja, Order Statistics,
 * section 7.3. That member-weighted trials hold what they say, and order statistics of members'
 * medians do not, is this project's simulation ({@code CoverageEndToEndTest}).
 */
public final class NextMemberInterval {
  /** The level of the band to plan a grid over. */
  public static final double LEVEL = 0.8;

  /** Fewest members of whom a span is shown at all. */
  public static final int FEWEST = 3;

  private static final double ROUNDING = 1e-9;

  private NextMemberInterval() {}

  /**
   * The ranks (from 1) for a level where each member has one trial; empty where n cannot reach it
   * (0.8 needs 9).
   *
   * @param n number of members, not negative
   */
  public static Optional<Ranks> ranks(int n, double level) {
    Checked.level(level);
    int rank = (int) Math.floor((n + 1) * (1 - level) / 2 + ROUNDING);
    if (rank < 1) {
      return Optional.empty();
    }
    return Optional.of(new Ranks(rank, n + 1 - rank, (n + 1.0 - 2 * rank) / (n + 1)));
  }

  /** Chance that the next member lands between the smallest and the largest of n members. */
  public static double spanCoverage(int n) {
    return n < 1 ? 0 : (n - 1.0) / (n + 1);
  }

  /**
   * The band to plan a grid over. From 9 members that of 80 %; from 3 to 8 the smallest to the
   * largest trial, with the lower chance that has; below 3 nothing.
   *
   * @param trials how many values each member has, 1 or more
   * @param values those of one member side by side, in the order of {@code trials}
   */
  public static Optional<Interval> band(int[] trials, double[] values) {
    return band(trials, values, values.length);
  }

  /**
   * The same of an array that is longer than needed.
   *
   * @param n how many values there are
   */
  public static Optional<Interval> band(int[] trials, double[] values, int n) {
    Checked.sameLength(Arrays.stream(trials).sum(), n);
    int members = trials.length;
    if (members < FEWEST) {
      return Optional.empty();
    }
    WeightedTrials weighted = WeightedTrials.of(trials, values, n);
    if (ranks(members, LEVEL).isEmpty()) {
      return Optional.of(new Interval(weighted.least(), weighted.largest(), spanCoverage(members)));
    }
    double[] ends = weighted.quantiles((1 - LEVEL) / 2, (1 + LEVEL) / 2);
    return Optional.of(new Interval(ends[0], ends[1], LEVEL));
  }
}
