package club.emberwell.stats;

import org.apache.commons.numbers.arrays.Selection;

/**
 * Two order statistics, counted from 1, and the probability of the range between them.
 *
 * @param low rank of the lower bound
 * @param high rank of the upper bound
 * @param coverage exact coverage of the range for any continuous distribution
 */
public record Ranks(int low, int high, double coverage) {

  /** The range these ranks cut out of values in any order. */
  Interval of(double[] values) {
    double[] copy = values.clone();
    Selection.select(copy, new int[] {low - 1, high - 1});
    return new Interval(copy[low - 1], copy[high - 1], coverage);
  }
}
