package club.emberwell.consensus.dose;

import club.emberwell.consensus.range.ConsensusLimits;
import club.emberwell.consensus.range.Group;
import club.emberwell.consensus.range.Range;
import club.emberwell.consensus.range.Spread;
import club.emberwell.laser.Effect;
import club.emberwell.stats.ModifiedZ;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * The trials of a group that state a positive dose. Left out are those of members set aside and
 * single trials far from all others.
 *
 * @param rows indices into the columns, members ascending
 * @param members 0, 1, 2, ... in the order of the members' numbers, one for each row
 * @param doses canonical, one for each row
 * @param undosed trials left out because they state no dose
 * @param aside indices of the trials left out because their member's dose is set aside
 * @param strays indices of the trials left out one by one
 */
public record Dosed(
    Group group,
    int[] rows,
    int[] members,
    double[] doses,
    int undosed,
    int[] aside,
    int[] strays) {

  public static Dosed of(Group group, Spread dose) {
    double[] voices = dose.voices().values();
    boolean judged =
        voices.length >= ModifiedZ.FEWEST && Arrays.stream(voices).allMatch(voice -> voice > 0);
    return without(
        group,
        dose.aside().members(),
        judged ? Optional.of(ModifiedZ.ofLogs(voices)) : Optional.empty());
  }

  /** Of everybody, where what is far off in the group as a whole may be usual for its kind. */
  public static Dosed of(Group group) {
    return without(group, new long[0], Optional.empty());
  }

  private static Dosed without(Group group, long[] setAside, Optional<ModifiedZ> scale) {
    double[] column = group.columns().values(Range.doseMeasure(group.key()));
    int[] all = group.rows();
    int[] rows = new int[all.length];
    int[] members = new int[all.length];
    double[] doses = new double[all.length];
    List<Integer> strays = new ArrayList<>();
    int n = 0;
    int undosed = 0;
    List<Integer> aside = new ArrayList<>();
    int index = -1;
    long last = 0;
    for (int row : all) {
      long member = group.member(row);
      if (Arrays.binarySearch(setAside, member) >= 0) {
        aside.add(row);
      } else if (!(column[row] > 0)) {
        undosed++;
      } else if (scale.isPresent() && strays(scale.get(), column[row], effect(group, row))) {
        strays.add(row);
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
        aside.stream().mapToInt(Integer::intValue).toArray(),
        strays.stream().mapToInt(Integer::intValue).toArray());
  }

  /** Too little far below and too much far above are what tests at the ends are for. */
  private static boolean strays(ModifiedZ scale, double dose, Effect effect) {
    double off = Math.log(dose) - scale.median();
    if (Math.abs(off) < Math.log(ConsensusLimits.TRIAL_OFF)
        || Math.abs(scale.score(Math.log(dose))) <= ModifiedZ.CUT) {
      return false;
    }
    return effect == Effect.RIGHT || effect == (off < 0 ? Effect.TOO_MUCH : Effect.TOO_LITTLE);
  }

  private static Effect effect(Group group, int row) {
    return Effect.values()[group.columns().effect()[row]];
  }

  /** A trial of the group as a plot shows it. */
  Window.Mark mark(int row, boolean aside) {
    return new Window.Mark(dose(row), effect(group, row), group.columns().report()[row], aside);
  }

  /** Dose of a trial of the group; NaN where it states none. */
  double dose(int row) {
    return group.columns().values(Range.doseMeasure(group.key()))[row];
  }

  public int size() {
    return rows.length;
  }

  public boolean right(int i) {
    return group.right(rows[i]);
  }

  Effect effect(int i) {
    return effect(group, rows[i]);
  }

  Effect[] effects() {
    Effect[] effects = new Effect[size()];
    Arrays.setAll(effects, this::effect);
    return effects;
  }

  /** Number of the member of a trial. */
  public long member(int i) {
    return group.member(rows[i]);
  }
}
