package club.emberwell.consensus.range;

import club.emberwell.stats.MemberShare;
import java.util.Arrays;
import java.util.Optional;

/**
 * How often it works: the mean of the members' own shares, Wilson interval with n = members.
 *
 * @param right right trials of all
 * @param trials all trials
 * @param share empty where nobody tried
 */
public record Success(int right, int trials, Optional<MemberShare> share) {

  static Success of(Group group) {
    int[] rows = group.rows();
    int[] good = new int[rows.length];
    int[] all = new int[rows.length];
    int members = 0;
    long last = Long.MIN_VALUE;
    for (int row : rows) {
      if (group.member(row) != last || members == 0) {
        last = group.member(row);
        members++;
      }
      all[members - 1]++;
      good[members - 1] += group.right(row) ? 1 : 0;
    }
    return new Success(
        Arrays.stream(good).sum(),
        rows.length,
        MemberShare.of(Arrays.copyOf(good, members), Arrays.copyOf(all, members)));
  }
}
