package club.emberwell.consensus.range;

import club.emberwell.stats.MemberShare;
import java.util.Arrays;
import java.util.Optional;

/**
 * How often it works: the mean of the members' own shares, Wilson interval with n = members. Cells
 * of test grids, many of them made to fail, are counted apart.
 *
 * @param right right ones among the single trials
 * @param trials single trials: those whose report has no other
 * @param share over the single trials; empty where there is none
 * @param cells trials of reports with several
 */
public record Success(int right, int trials, Optional<MemberShare> share, Cells cells) {

  /** Cells of test grids. */
  public record Cells(int right, int cells) {}

  static Success of(Group group) {
    int[] rows = group.rows();
    boolean[] cell = cells(group);
    int[] good = new int[rows.length];
    int[] all = new int[rows.length];
    int members = 0;
    int cells = 0;
    int goodCells = 0;
    long last = Long.MIN_VALUE;
    for (int i = 0; i < rows.length; i++) {
      if (cell[i]) {
        cells++;
        goodCells += group.right(rows[i]) ? 1 : 0;
        continue;
      }
      if (group.member(rows[i]) != last || members == 0) {
        last = group.member(rows[i]);
        members++;
      }
      all[members - 1]++;
      good[members - 1] += group.right(rows[i]) ? 1 : 0;
    }
    return new Success(
        Arrays.stream(good).sum(),
        rows.length - cells,
        MemberShare.of(Arrays.copyOf(good, members), Arrays.copyOf(all, members)),
        new Cells(goodCells, cells));
  }

  /** Which rows share their report with another; a report's trials are one member's. */
  private static boolean[] cells(Group group) {
    int[] rows = group.rows();
    long[] report = group.columns().report();
    boolean[] cell = new boolean[rows.length];
    int from = 0;
    while (from < rows.length) {
      int to = from + 1;
      while (to < rows.length && group.member(rows[to]) == group.member(rows[from])) {
        to++;
      }
      long[] order = new long[to - from];
      for (int i = from; i < to; i++) {
        order[i - from] = report[rows[i]];
      }
      Arrays.sort(order);
      for (int i = from; i < to; i++) {
        int at = Arrays.binarySearch(order, report[rows[i]]);
        cell[i] =
            at > 0 && order[at - 1] == order[at]
                || at + 1 < order.length && order[at + 1] == order[at];
      }
      from = to;
    }
    return cell;
  }
}
