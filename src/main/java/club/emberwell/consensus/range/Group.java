package club.emberwell.consensus.range;

import club.emberwell.laser.Effect;
import club.emberwell.search.column.TrialColumns;
import club.emberwell.search.query.Property;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.function.IntToLongFunction;
import java.util.stream.IntStream;

/**
 * The trials of one key.
 *
 * @param rows indices into the columns, those of one member side by side, members ascending
 */
public record Group(RangeKey key, TrialColumns columns, int[] rows) {
  /** Numbers of reports and machines are counted up: a bit each beats sorting them. */
  private static final int DENSE = 1 << 24;

  private static final int RIGHT = Effect.RIGHT.ordinal();

  /** Splits by key, the group with most voices first, ties by trials. */
  public static List<Group> split(TrialColumns columns) {
    TrialKeys keys = TrialKeys.of(columns);
    int[] counts = new int[keys.size()];
    for (int i = 0; i < columns.size(); i++) {
      counts[keys.of(i)]++;
    }
    long[][] ordered = new long[keys.size()][];
    int[] filled = new int[keys.size()];
    for (int i = 0; i < columns.size(); i++) {
      int key = keys.of(i);
      if (ordered[key] == null) {
        ordered[key] = new long[counts[key]];
      }
      ordered[key][filled[key]++] = columns.member()[i] << 32 | i;
    }
    List<Group> groups = new ArrayList<>();
    for (int key = 0; key < ordered.length; key++) {
      groups.add(new Group(keys.key(key), columns, rows(ordered[key])));
    }
    groups.sort(
        Comparator.comparingInt(Group::voices)
            .thenComparingInt(g -> g.rows.length)
            .reversed()
            .thenComparing(group -> group.key().words()));
    return groups;
  }

  private static int[] rows(long[] membersAndRows) {
    Arrays.sort(membersAndRows);
    int[] rows = new int[membersAndRows.length];
    for (int i = 0; i < rows.length; i++) {
      rows[i] = (int) membersAndRows[i];
    }
    return rows;
  }

  /**
   * The trials of several groups together, whatever keeps them apart: whole settings to look at.
   */
  public static Group together(RangeKey key, List<Group> groups) {
    TrialColumns columns = groups.get(0).columns;
    long[] all =
        groups.stream()
            .flatMapToInt(group -> Arrays.stream(group.rows))
            .mapToLong(row -> columns.member()[row] << 32 | row)
            .toArray();
    return new Group(key, columns, rows(all));
  }

  /** Whether a trial of this report is among them. */
  public boolean holds(long report) {
    return Arrays.stream(rows).anyMatch(row -> columns.report()[row] == report);
  }

  public boolean right(int row) {
    return columns.effect()[row] == RIGHT;
  }

  public long member(int row) {
    return columns.member()[row];
  }

  /** Members with at least one right trial. */
  int voices() {
    int voices = 0;
    long last = Long.MIN_VALUE;
    for (int row : rows) {
      if (right(row) && member(row) != last) {
        voices++;
        last = member(row);
      }
    }
    return voices;
  }

  int reports() {
    return distinct(rows.length, i -> columns.report()[rows[i]]);
  }

  /** Machines kept here, plus one per member who described a laser in the report only. */
  int machines() {
    return distinct(rows.length, i -> machine(rows[i]));
  }

  /** The machine's number; below zero for the lasers a member described in reports only. */
  public long machine(int row) {
    long machine = columns.machine()[row];
    return machine == 0 ? -1 - member(row) : machine;
  }

  /** Code of a property, -1 = not given. */
  public int code(Property property, int row) {
    return columns.property(property)[row];
  }

  private static int distinct(int n, IntToLongFunction of) {
    long least = Long.MAX_VALUE;
    long most = Long.MIN_VALUE;
    for (int i = 0; i < n; i++) {
      least = Math.min(least, of.applyAsLong(i));
      most = Math.max(most, of.applyAsLong(i));
    }
    if (n > 0 && most - least >= 0 && most - least < DENSE) {
      BitSet seen = new BitSet((int) (most - least) + 1);
      for (int i = 0; i < n; i++) {
        seen.set((int) (of.applyAsLong(i) - least));
      }
      return seen.cardinality();
    }
    return (int) IntStream.range(0, n).mapToLong(of).distinct().count();
  }
}
