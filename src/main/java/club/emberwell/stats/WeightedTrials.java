package club.emberwell.stats;

import java.util.Arrays;

/**
 * Values of members, each weighing 1 / (values of its member), for the quantiles of {@link
 * NextMemberInterval}.
 *
 * @param trials how many values each member has
 * @param values those of one member side by side
 * @param n how many of them there are
 */
record WeightedTrials(int[] trials, double[] values, int n, double least, double largest) {
  /** Up to so many all are sorted; of more, only those about the quantiles. */
  private static final int SORTED = 2_000;

  /** Of more than that so many, evenly taken, say about where a quantile lies. */
  private static final int SAMPLE = 2_000;

  /** Share of the values on either side of that place that are looked at. */
  private static final double MARGIN = 0.02;

  static WeightedTrials of(int[] trials, double[] values, int n) {
    double least = Double.POSITIVE_INFINITY;
    double largest = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < n; i++) {
      if (!Double.isFinite(values[i])) {
        throw new IllegalArgumentException("not a finite number: " + values[i]);
      }
      least = Math.min(least, values[i]);
      largest = Math.max(largest, values[i]);
    }
    return new WeightedTrials(trials, values, n, least, largest);
  }

  /** Some of the values from one to another, and what weighs less than all of them. */
  private static final class Stretch {
    private final double low;
    private final double high;
    private double[] values;
    private double[] weights;
    private double before;
    private int n;

    Stretch(double low, double high, int about) {
      this.low = low;
      this.high = high;
      values = new double[about];
      weights = new double[about];
    }

    void add(double value, double weight) {
      if (value < low) {
        before += weight;
      } else if (value <= high) {
        if (n == values.length) {
          values = Arrays.copyOf(values, 2 * n);
          weights = Arrays.copyOf(weights, 2 * n);
        }
        values[n] = value;
        weights[n++] = weight;
      }
    }

    /** By value; where two are equal to some ten digits, by place. */
    int[] order() {
      long places = Long.highestOneBit(Math.max(1, n)) * 2 - 1;
      long[] keys = new long[n];
      for (int i = 0; i < n; i++) {
        long bits = Double.doubleToLongBits(values[i]);
        // so that negative numbers come in their order too
        keys[i] = (bits ^ (bits >> 63 & Long.MAX_VALUE)) & ~places | i;
      }
      Arrays.sort(keys);
      return Arrays.stream(keys).mapToInt(key -> (int) (key & places)).toArray();
    }

    /** By interpolation; NaN where the place is not between two of them. */
    double quantile(double at) {
      double sum = before;
      double last = Double.NaN;
      double lastAt = Double.NaN;
      for (int i : order()) {
        double here = sum + weights[i] / 2;
        if (here == at) {
          return values[i];
        }
        if (here > at) {
          return last + (at - lastAt) / (here - lastAt) * (values[i] - last);
        }
        sum += weights[i];
        last = values[i];
        lastAt = here;
      }
      return Double.NaN;
    }

    /** The value up to which a weight lies. */
    double place(int[] order, double weight) {
      double sum = 0;
      for (int i : order) {
        sum += weights[i];
        if (sum >= weight) {
          return values[i];
        }
      }
      return values[order[order.length - 1]];
    }
  }

  /** Quantiles at a low and a high probability; none lies beyond the least and largest. */
  double[] quantiles(double low, double high) {
    Stretch[] about = n > SORTED ? about(low, high) : new Stretch[] {all(n), all(n)};
    fill(about[0], about[1]);
    return new double[] {
      quantile(about[0], position(low), least), quantile(about[1], position(high), largest)
    };
  }

  /** (weight before + half the own + 1/2) / (m + 1) = p, solved for the first two. */
  private double position(double p) {
    return p * (trials.length + 1) - 0.5;
  }

  private double quantile(Stretch about, double at, double end) {
    double found = about.quantile(at);
    if (Double.isNaN(found) && n > SORTED) {
      Stretch all = all(n);
      fill(all, new Stretch(Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, 1));
      found = all.quantile(at);
    }
    return Double.isNaN(found) ? end : found;
  }

  private void fill(Stretch one, Stretch other) {
    int i = 0;
    for (int own : trials) {
      double weight = 1.0 / own;
      for (int end = i + own; i < end; i++) {
        one.add(values[i], weight);
        other.add(values[i], weight);
      }
    }
  }

  private Stretch[] about(double low, double high) {
    Stretch sample = all(SAMPLE + 1);
    int i = 0;
    long next = 0;
    for (int own : trials) {
      for (int end = i + own; i < end; i++) {
        if (i >= next * n / SAMPLE) {
          sample.add(values[i], 1.0 / own);
          next++;
        }
      }
    }
    int[] order = sample.order();
    double all = Arrays.stream(sample.weights, 0, sample.n).sum();
    int room = (int) (3 * MARGIN * n);
    return new Stretch[] {
      new Stretch(
          sample.place(order, (low - MARGIN) * all),
          sample.place(order, (low + MARGIN) * all),
          room),
      new Stretch(
          sample.place(order, (high - MARGIN) * all),
          sample.place(order, (high + MARGIN) * all),
          room)
    };
  }

  private static Stretch all(int room) {
    return new Stretch(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY, room);
  }
}
