package club.emberwell.consensus.range;

import club.emberwell.laser.Effect;
import club.emberwell.laser.Process;
import club.emberwell.laser.Regime;
import club.emberwell.laser.WavelengthBand;
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
  private static final int KEYS =
      Process.values().length * WavelengthBand.values().length * Regime.values().length;

  /** Numbers of reports and machines are counted up: a bit each beats sorting them. */
  private static final int DENSE = 1 << 24;

  private static final int RIGHT = Effect.RIGHT.ordinal();

  /** Splits by key, the group with most voices first, ties by trials, then by key. */
  public static List<Group> split(TrialColumns columns) {
    int[] counts = new int[KEYS];
    for (int i = 0; i < columns.size(); i++) {
      counts[code(columns, i)]++;
    }
    long[][] ordered = new long[KEYS][];
    int[] filled = new int[KEYS];
    for (int i = 0; i < columns.size(); i++) {
      int code = code(columns, i);
      if (ordered[code] == null) {
        ordered[code] = new long[counts[code]];
      }
      ordered[code][filled[code]++] = columns.member()[i] << 32 | i;
    }
    List<Group> groups = new ArrayList<>();
    for (int code = 0; code < KEYS; code++) {
      if (ordered[code] != null) {
        Arrays.sort(ordered[code]);
        int[] rows = new int[counts[code]];
        for (int i = 0; i < rows.length; i++) {
          rows[i] = (int) ordered[code][i];
        }
        groups.add(new Group(key(code), columns, rows));
      }
    }
    groups.sort(
        Comparator.comparingInt(Group::voices).thenComparingInt(g -> g.rows.length).reversed());
    return groups;
  }

  private static int code(TrialColumns columns, int i) {
    int bands = WavelengthBand.values().length;
    int regimes = Regime.values().length;
    return (columns.process()[i] * bands + columns.band()[i]) * regimes + columns.regime()[i];
  }

  private static RangeKey key(int code) {
    int bands = WavelengthBand.values().length;
    int regimes = Regime.values().length;
    return new RangeKey(
        Process.values()[code / regimes / bands],
        WavelengthBand.values()[code / regimes % bands],
        Regime.values()[code % regimes]);
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
