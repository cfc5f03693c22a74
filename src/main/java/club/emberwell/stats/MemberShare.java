package club.emberwell.stats;

import java.util.Optional;

/**
 * How often it works, each member counting once: the mean of the members' own shares with a Wilson
 * interval whose n is the number of members. Rank by the lower bound.
 *
 * <p>Source: Wilson, JASA 22 (1927) 209-212, with a fractional share. One member with 48 of 50 and
 * four singles, two of them good: pooled 93 %, by member 59 % (23 to 88).
 *
 * @param share mean of the members' shares, 0 to 1
 * @param members members with at least one trial
 * @param interval Wilson interval at 0.95 for {@code share}
 */
public record MemberShare(double share, int members, Interval interval) {

  /** Level of the interval. */
  public static final double LEVEL = 0.95;

  /**
   * From counts per member; members without trials are left out.
   *
   * @param good right trials of each member
   * @param trials all trials of each member
   * @return empty where nobody has a trial
   */
  public static Optional<MemberShare> of(int[] good, int[] trials) {
    Checked.sameLength(good.length, trials.length);
    double shares = 0;
    int members = 0;
    for (int i = 0; i < good.length; i++) {
      if (good[i] < 0 || good[i] > trials[i]) {
        throw new IllegalArgumentException(good[i] + " of " + trials[i]);
      }
      if (trials[i] > 0) {
        members++;
        shares += (double) good[i] / trials[i];
      }
    }
    if (members == 0) {
      return Optional.empty();
    }
    double share = Math.min(1, shares / members);
    return Optional.of(
        new MemberShare(share, members, BinomialInterval.wilsonShare(share, members, LEVEL)));
  }
}
