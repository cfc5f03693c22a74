package club.emberwell.consensus.range;

import java.util.Arrays;

/**
 * The right trials of a group, gathered once for all measures.
 *
 * @param group whose trials they are
 * @param rows indices into the columns, those of one member side by side
 * @param members numbers of the members, ascending
 * @param starts where each member's rows begin, and behind the last where they end
 */
record RightTrials(Group group, int[] rows, long[] members, int[] starts) {

  static RightTrials of(Group group) {
    int[] all = group.rows();
    int[] rows = new int[all.length];
    long[] members = new long[all.length];
    int[] starts = new int[all.length + 1];
    int n = 0;
    int voices = 0;
    for (int row : all) {
      if (group.right(row)) {
        long member = group.member(row);
        if (voices == 0 || members[voices - 1] != member) {
          members[voices] = member;
          starts[voices++] = n;
        }
        rows[n++] = row;
      }
    }
    starts[voices] = n;
    return new RightTrials(
        group,
        Arrays.copyOf(rows, n),
        Arrays.copyOf(members, voices),
        Arrays.copyOf(starts, voices + 1));
  }
}
