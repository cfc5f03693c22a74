package club.emberwell.stats;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * Values in cells of rows crossed with columns, slips set aside: what {@link CrossedEffects} is
 * fitted to.
 *
 * @param rows how many rows there are
 * @param columns how many columns
 * @param row of each cell that holds a value
 * @param column of each such cell
 * @param mean of its values
 * @param count of its values
 * @param within variance of the values of one cell
 */
record CrossedCells(
    int rows, int columns, int[] row, int[] column, double[] mean, int[] count, double within) {
  /** Rounds of medians by turns; more change nothing that matters for naming slips. */
  private static final int ROUNDS = 4;

  /** So many cells of nought are taken beside those of a column: most columns are ordinary. */
  private static final int ORDINARY = 1;

  /**
   * What one more repeat is taken to differ by, weighing as much as two repeats: keeps a variance
   * from being zero (common practice, no source).
   */
  private static final double REPEAT = 0.2;

  private static final int REPEAT_WEIGHT = 2;

  /** A slip is at least so many times off: every usual one of units is (own rule, no source). */
  private static final double SLIP = 2;

  /** Cell of each value, numbered as they first come. */
  private record Places(int[] of, int[] row, int[] column) {
    static Places of(CrossedEffects.Values values) {
      Map<Long, Integer> known = new HashMap<>();
      int n = values.logs().length;
      int[] of = new int[n];
      int[] row = new int[n];
      int[] column = new int[n];
      for (int i = 0; i < n; i++) {
        long key = (long) values.rows()[i] << 32 | values.columns()[i];
        Integer place = known.putIfAbsent(key, known.size());
        of[i] = place == null ? known.size() - 1 : place;
        row[of[i]] = values.rows()[i];
        column[of[i]] = values.columns()[i];
      }
      return new Places(of, Arrays.copyOf(row, known.size()), Arrays.copyOf(column, known.size()));
    }
  }

  static CrossedCells of(CrossedEffects.Values values) {
    Places places = Places.of(values);
    boolean[] aside = slips(values, places);
    int[] kept = IntStream.range(0, aside.length).filter(i -> !aside[i]).toArray();
    Places left = Places.of(values.only(kept));
    int n = left.row().length;
    double[] mean = new double[n];
    int[] count = new int[n];
    for (int i = 0; i < kept.length; i++) {
      mean[left.of()[i]] += values.logs()[kept[i]];
      count[left.of()[i]]++;
    }
    for (int cell = 0; cell < n; cell++) {
      mean[cell] /= count[cell];
    }
    double squares = 0;
    for (int i = 0; i < kept.length; i++) {
      squares += Math.pow(values.logs()[kept[i]] - mean[left.of()[i]], 2);
    }
    double within = (squares + REPEAT_WEIGHT * REPEAT * REPEAT) / (kept.length - n + REPEAT_WEIGHT);
    return new CrossedCells(
        values.rowCount(), values.columnCount(), left.row(), left.column(), mean, count, within);
  }

  /** By the modified z of what rows and columns leave over (median polish, Tukey 1977). */
  private static boolean[] slips(CrossedEffects.Values values, Places places) {
    if (values.logs().length < ModifiedZ.FEWEST) {
      return new boolean[values.logs().length];
    }
    double[] medians = medians(groups(places.of(), places.row().length), values.logs());
    int[][] byRow = groups(places.row(), values.rowCount());
    int[][] byColumn = groups(places.column(), values.columnCount());
    double[] column = new double[values.columnCount()];
    double[] row = new double[values.rowCount()];
    double[] rest = new double[medians.length];
    for (int round = 0; round < ROUNDS; round++) {
      for (int cell = 0; cell < rest.length; cell++) {
        rest[cell] = medians[cell] - column[places.column()[cell]];
      }
      row = medians(byRow, rest);
      for (int cell = 0; cell < rest.length; cell++) {
        rest[cell] = medians[cell] - row[places.row()[cell]];
      }
      column = medians(byColumn, rest);
      for (int i = 0; i < column.length; i++) {
        int own = byColumn[i].length;
        column[i] = own == 0 ? 0 : column[i] * own / (own + ORDINARY);
      }
    }
    double[] left = new double[values.logs().length];
    for (int i = 0; i < left.length; i++) {
      left[i] = values.logs()[i] - row[values.rows()[i]] - column[values.columns()[i]];
    }
    boolean[] beyond = ModifiedZ.of(left).beyond();
    for (int i = 0; i < left.length; i++) {
      beyond[i] &= Math.abs(left[i]) > Math.log(SLIP);
    }
    return beyond;
  }

  /** Indices by group. */
  static int[][] groups(int[] of, int count) {
    int[] sizes = new int[count];
    for (int group : of) {
      sizes[group]++;
    }
    int[][] groups = new int[count][];
    Arrays.setAll(groups, group -> new int[sizes[group]]);
    for (int i = of.length - 1; i >= 0; i--) {
      groups[of[i]][--sizes[of[i]]] = i;
    }
    return groups;
  }

  /** NaN of an empty group. */
  private static double[] medians(int[][] groups, double[] values) {
    return Arrays.stream(groups)
        .mapToDouble(
            own -> Quantiles.median(IntStream.of(own).mapToDouble(i -> values[i]).toArray()))
        .toArray();
  }

  int size() {
    return row.length;
  }
}
