package club.emberwell.stats;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.TreeMap;

/**
 * Whether a recorded property splits the voices: of all ways to part its labels in two by their
 * mean ln value, the one with the largest between-group sum of squares, judged by how often
 * shuffled labels split as well. Best splits of ordered labels: Fisher, JASA 53 (1958) 789-798;
 * permutation test with the search repeated inside: Westfall &amp; Young, Resampling-Based Multiple
 * Testing (1993); several properties: {@link Holm}.
 *
 * <p>Deterministic: every arrangement is tried where there are few, otherwise the same fixed list
 * of shuffles each time, in which the observed arrangement counts as one, stopped early where the
 * answer is clear (Besag &amp; Clifford, Biometrika 78 (1991) 301-304).
 *
 * @param property its name
 * @param low labels of the group with the smaller values, sorted
 * @param high labels of the other group, sorted
 * @param lowVoices voices in the low group
 * @param highVoices voices in the high group
 * @param ratio geometric mean of the high group over that of the low group
 * @param pValue chance of as good a split where the property does not matter
 * @param adjusted the same, by Holm's rule over all properties that could be tested
 */
public record PermutationSplit(
    String property,
    List<String> low,
    List<String> high,
    int lowVoices,
    int highVoices,
    double ratio,
    double pValue,
    double adjusted) {

  /** Fewest voices on each side of a split. */
  public static final int FEWEST_EACH = 2;

  /** Up to so many arrangements all are tried. */
  static final int MOST_ARRANGEMENTS = 20_000;

  private static final int SHUFFLES = 9_999;
  private static final int FEWEST_SHUFFLES = 999;

  /** So many shuffles that split as well settle that the property does not matter. */
  private static final int ENOUGH = 30;

  private static final int MOST_WORK = 5_000_000;
  private static final long ORDER = 20_261_125;
  private static final double ROUNDING = 1e-9;

  /**
   * The best split of each property that can be split, the clearest first.
   *
   * @param voices positive values
   * @param properties per name one label for each voice; null where it is not recorded, and the
   *     voice is then left out for that property
   * @return empty where no property has two voices on each side
   */
  public static List<PermutationSplit> of(double[] voices, Map<String, String[]> properties) {
    double[] logs = Checked.logs(voices);
    List<PermutationSplit> splits = new ArrayList<>();
    new TreeMap<>(properties)
        .forEach((name, labels) -> of(name, logs, labels).ifPresent(splits::add));
    double[] adjusted = Holm.adjust(splits.stream().mapToDouble(s -> s.pValue).toArray());
    for (int i = 0; i < adjusted.length; i++) {
      splits.set(i, splits.get(i).adjustedTo(adjusted[i]));
    }
    splits.sort(
        Comparator.comparingDouble(PermutationSplit::adjusted)
            .thenComparing(Comparator.comparingDouble(PermutationSplit::ratio).reversed()));
    return splits;
  }

  private PermutationSplit adjustedTo(double value) {
    return new PermutationSplit(property, low, high, lowVoices, highVoices, ratio, pValue, value);
  }

  private static Optional<PermutationSplit> of(String name, double[] logs, String[] labels) {
    Checked.sameLength(labels.length, logs.length);
    String[] names =
        Arrays.stream(labels)
            .filter(label -> label != null)
            .distinct()
            .sorted()
            .toArray(String[]::new);
    double[] values = new double[logs.length];
    int[] groups = new int[logs.length];
    int n = 0;
    for (int i = 0; i < logs.length; i++) {
      if (labels[i] != null) {
        values[n] = logs[i];
        groups[n++] = Arrays.binarySearch(names, labels[i]);
      }
    }
    Search search = new Search(Arrays.copyOf(values, n), names.length);
    int[] observed = Arrays.copyOf(groups, n);
    double best = search.best(observed);
    return best < 0 ? Optional.empty() : Optional.of(search.split(name, names, observed, best));
  }

  /** The search for the best split of one property, again and again on shuffled labels. */
  private static final class Search {
    private final double[] values;
    private final double[] sums;
    private final int[] counts;
    private final Integer[] order;
    private int cut;

    Search(double[] values, int groups) {
      double mean = Summary.mean(values);
      this.values = Arrays.stream(values).map(value -> value - mean).toArray();
      sums = new double[groups];
      counts = new int[groups];
      order = new Integer[groups];
    }

    /** Between-group sum of squares of the best cut; below 0 where none has enough voices. */
    double best(int[] groups) {
      Arrays.fill(sums, 0);
      Arrays.fill(counts, 0);
      for (int i = 0; i < values.length; i++) {
        sums[groups[i]] += values[i];
        counts[groups[i]]++;
      }
      for (int group = 0; group < order.length; group++) {
        order[group] = group;
      }
      Arrays.sort(order, Comparator.comparingDouble(group -> sums[group] / counts[group]));
      double best = -1;
      double sum = 0;
      int count = 0;
      for (int i = 0; i + 1 < order.length; i++) {
        sum += sums[order[i]];
        count += counts[order[i]];
        int rest = values.length - count;
        // the values are centred: the other side's sum is -sum
        double between = sum * sum / count + sum * sum / rest;
        if (count >= FEWEST_EACH && rest >= FEWEST_EACH && between > best) {
          best = between;
          cut = i + 1;
        }
      }
      return best;
    }

    PermutationSplit split(String property, String[] names, int[] groups, double best) {
      List<String> low = new ArrayList<>();
      List<String> high = new ArrayList<>();
      double lowSum = 0;
      int lowCount = 0;
      for (int i = 0; i < order.length; i++) {
        (i < cut ? low : high).add(names[order[i]]);
        if (i < cut) {
          lowSum += sums[order[i]];
          lowCount += counts[order[i]];
        }
      }
      low.sort(null);
      high.sort(null);
      int highCount = values.length - lowCount;
      double ratio = Math.exp(-lowSum / highCount - lowSum / lowCount);
      double p = pValue(groups, best);
      return new PermutationSplit(property, low, high, lowCount, highCount, ratio, p, p);
    }

    private double pValue(int[] groups, double observed) {
      double enough = observed * (1 - ROUNDING);
      int[] labels = groups.clone();
      Arrays.sort(labels);
      if (arrangements(labels) <= MOST_ARRANGEMENTS) {
        int as = 0;
        int all = 0;
        do {
          all++;
          as += best(labels) >= enough ? 1 : 0;
        } while (nextArrangement(labels));
        return (double) as / all;
      }
      int runs = Math.max(FEWEST_SHUFFLES, Math.min(SHUFFLES, MOST_WORK / labels.length));
      SplittableRandom fixed = new SplittableRandom(ORDER);
      int as = 0;
      for (int run = 1; run <= runs; run++) {
        shuffle(labels, fixed);
        as += best(labels) >= enough ? 1 : 0;
        if (as == ENOUGH) {
          return (double) as / run;
        }
      }
      return (as + 1.0) / (runs + 1);
    }

    /** Number of different orders of sorted labels, or more than the limit. */
    private static double arrangements(int[] sorted) {
      double number = 1;
      int same = 0;
      for (int i = 0; i < sorted.length && number <= MOST_ARRANGEMENTS * 1e6; i++) {
        same = i > 0 && sorted[i] == sorted[i - 1] ? same + 1 : 1;
        number = number * (i + 1) / same;
      }
      return Math.rint(number);
    }

    /** The next order in the dictionary; false after the last. */
    private static boolean nextArrangement(int[] labels) {
      int i = labels.length - 2;
      while (i >= 0 && labels[i] >= labels[i + 1]) {
        i--;
      }
      if (i < 0) {
        return false;
      }
      int j = labels.length - 1;
      while (labels[j] <= labels[i]) {
        j--;
      }
      swap(labels, i, j);
      for (int a = i + 1, b = labels.length - 1; a < b; a++, b--) {
        swap(labels, a, b);
      }
      return true;
    }

    private static void shuffle(int[] labels, SplittableRandom random) {
      for (int i = labels.length - 1; i > 0; i--) {
        swap(labels, i, random.nextInt(i + 1));
      }
    }

    private static void swap(int[] labels, int i, int j) {
      int kept = labels[i];
      labels[i] = labels[j];
      labels[j] = kept;
    }
  }
}
