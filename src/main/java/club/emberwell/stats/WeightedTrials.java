package club.emberwell.stats;

import java.util.Arrays;

/**
 * Values of members, each weighing 1 / (values of its member), for the quantiles of {@link
 * NextMemberInterval}.
 *
 * @param values those of one member side by side
 * @param weights as many
 * @param members whose weights sum to 1 each
 */
record WeightedTrials(double[] values, double[] weights, int members) {
  /** Up to so many all are sorted; of more, only those about the quantile. */
  private static final int SORTED = 2_000;

  /** Of more than that so many, evenly taken, say about where it lies. */
  private static final int SAMPLE = 1_000;

  /** Share of the values on either side of that place that are looked at. */
  private static final double MARGIN = 0.03;

  static WeightedTrials of(int[] trials, double[] values) {
    double[] weights = new double[values.length];
    int from = 0;
    for (int own : trials) {
      Arrays.fill(weights, from, from + own, 1.0 / own);
      from += own;
    }
    Checked.sameLength(from, values.length);
    return new WeightedTrials(values, weights, trials.length);
  }

  /** Some of the values in ascending order, and what weighs less than all of them. */
  private record Sorted(double[] values, double[] weights, double before) {}

  double quantile(double p) {
    double at = p * (members + 1) - 0.5;
    if (values.length > SORTED) {
      double found = quantile(about(p), at);
      if (!Double.isNaN(found)) {
        return found;
      }
    }
    double found = quantile(between(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY), at);
    boolean low = at < members / 2.0;
    return Double.isNaN(found) ? end(low) : found;
  }

  private double end(boolean low) {
    return low
        ? Arrays.stream(values).min().orElseThrow()
        : Arrays.stream(values).max().orElseThrow();
  }

  /** By interpolation; NaN where the place is not between two of the sorted. */
  private static double quantile(Sorted sorted, double at) {
    double before = sorted.before();
    double last = Double.NaN;
    double lastAt = Double.NaN;
    for (int i = 0; i < sorted.values().length; i++) {
      double here = before + sorted.weights()[i] / 2;
      if (here >= at) {
        if (here == at) {
          return sorted.values()[i];
        }
        double share = (at - lastAt) / (here - lastAt);
        return last + share * (sorted.values()[i] - last);
      }
      before += sorted.weights()[i];
      last = sorted.values()[i];
      lastAt = here;
    }
    return Double.NaN;
  }

  private Sorted about(double p) {
    double[] sample = new double[SAMPLE];
    double[] heavy = new double[SAMPLE];
    for (int i = 0; i < SAMPLE; i++) {
      int place = (int) ((long) i * values.length / SAMPLE);
      sample[i] = values[place];
      heavy[i] = weights[place];
    }
    Sorted sorted = sorted(sample, heavy, 0);
    double all = Arrays.stream(heavy).sum();
    return between(place(sorted, (p - MARGIN) * all), place(sorted, (p + MARGIN) * all));
  }

  private static double place(Sorted sorted, double weight) {
    double before = 0;
    for (int i = 0; i < sorted.values().length; i++) {
      before += sorted.weights()[i];
      if (before >= weight) {
        return sorted.values()[i];
      }
    }
    return sorted.values()[sorted.values().length - 1];
  }

  private Sorted between(double low, double high) {
    double[] kept = new double[values.length];
    double[] heavy = new double[values.length];
    double before = 0;
    int n = 0;
    for (int i = 0; i < values.length; i++) {
      if (values[i] < low) {
        before += weights[i];
      } else if (values[i] <= high) {
        kept[n] = values[i];
        heavy[n++] = weights[i];
      }
    }
    return sorted(Arrays.copyOf(kept, n), Arrays.copyOf(heavy, n), before);
  }

  /** By value; equal to some ten digits, the order of their places decides. */
  private static Sorted sorted(double[] values, double[] weights, double before) {
    int n = values.length;
    long places = Long.highestOneBit(Math.max(1, n)) * 2 - 1;
    long[] keys = new long[n];
    for (int i = 0; i < n; i++) {
      long bits = Double.doubleToLongBits(values[i]);
      // so that negative numbers come in their order too
      keys[i] = (bits ^ (bits >> 63 & Long.MAX_VALUE)) & ~places | i;
    }
    Arrays.sort(keys);
    double[] ascending = new double[n];
    double[] heavy = new double[n];
    for (int i = 0; i < n; i++) {
      int place = (int) (keys[i] & places);
      ascending[i] = values[place];
      heavy[i] = weights[place];
    }
    return new Sorted(ascending, heavy, before);
  }
}
