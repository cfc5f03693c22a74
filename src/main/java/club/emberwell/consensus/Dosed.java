package club.emberwell.consensus;

import club.emberwell.laser.Effect;
import java.util.Arrays;

/**
 * The trials of a group that state a positive dose, members set aside left out.
 *
 * @param rows indices into the columns, members ascending
 * @param members 0, 1, 2, ... in the order of the members' numbers, one for each row
 * @param doses canonical, one for each row
 * @param undosed trials left out because they state no dose
 * @param aside trials left out because their member's dose is set aside
 */
record Dosed(Group group, int[] rows, int[] members, double[] doses, int undosed, int aside) {

  static Dosed of(Group group, Spread dose) {
    return without(group, dose.aside().members());
  }

  /** Of everybody, where what is far off in the group as a whole may be usual for its kind. */
  static Dosed of(Group group) {
    return without(group, new long[0]);
  }

  private static Dosed without(Group group, long[] setAside) {
    double[] column = group.columns().values(Range.doseMeasure(group.key()));
    int[] all = group.rows();
    int[] rows = new int[all.length];
    int[] members = new int[all.length];
    double[] doses = new double[all.length];
    int n = 0;
    int undosed = 0;
    int aside = 0;
    int index = -1;
    long last = 0;
    for (int row : all) {
      long member = group.member(row);
      if (Arrays.binarySearch(setAside, member) >= 0) {
        aside++;
      } else if (!(column[row] > 0)) {
        undosed++;
      } else {
        if (index < 0 || member != last) {
          index++;
          last = member;
        }
        rows[n] = row;
        members[n] = index;
        doses[n++] = column[row];
      }
    }
    return new Dosed(
        group,
        Arrays.copyOf(rows, n),
        Arrays.copyOf(members, n),
        Arrays.copyOf(doses, n),
        undosed,
        aside);
  }

  int size() {
    return rows.length;
  }

  boolean right(int i) {
    return group.right(rows[i]);
  }

  Effect effect(int i) {
    return Effect.values()[group.columns().effect()[rows[i]]];
  }

  Effect[] effects() {
    Effect[] effects = new Effect[size()];
    Arrays.setAll(effects, this::effect);
    return effects;
  }

  /** Number of the member of a trial. */
  long member(int i) {
    return group.member(rows[i]);
  }
}
