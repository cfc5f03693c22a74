package club.emberwell.consensus.range;

import club.emberwell.search.query.Measure;
import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * One value per member for one measure: the median of the member's right trials that state it.
 *
 * @param members numbers of the members, ascending
 * @param values in the measure's canonical unit, same order
 * @param trials how many right trials stand behind each value
 */
public record VoiceSet(Measure measure, long[] members, double[] values, int[] trials) {

  /**
   * The voices and what they are the medians of.
   *
   * @param trials values of the right trials that state the measure, a member's side by side; from
   *     {@code n} on there is nothing
   */
  record Stated(VoiceSet voices, double[] trials, int n) {}

  /** Members need not have stated every setting, so each measure has its own voices. */
  static Stated of(RightTrials right, Measure measure) {
    double[] column = right.group().columns().values(measure);
    int most = right.members().length;
    long[] members = new long[most];
    double[] values = new double[most];
    int[] trials = new int[most];
    double[] stated = new double[right.rows().length];
    int n = 0;
    int voices = 0;
    for (int m = 0; m < most; m++) {
      int from = n;
      for (int i = right.starts()[m]; i < right.starts()[m + 1]; i++) {
        double value = column[right.rows()[i]];
        if (!Double.isNaN(value)) {
          stated[n++] = value;
        }
      }
      if (n > from) {
        members[voices] = right.members()[m];
        values[voices] = median(stated, from, n - from);
        trials[voices++] = n - from;
      }
    }
    VoiceSet set =
        new VoiceSet(
            measure,
            Arrays.copyOf(members, voices),
            Arrays.copyOf(values, voices),
            Arrays.copyOf(trials, voices));
    return new Stated(set, stated, n);
  }

  /** Sorts the member's own on the way. */
  private static double median(double[] stated, int from, int count) {
    if (count == 1) {
      return stated[from];
    }
    Arrays.sort(stated, from, from + count);
    int half = from + count / 2;
    return count % 2 == 1 ? stated[half] : (stated[half - 1] + stated[half]) / 2;
  }

  public int size() {
    return members.length;
  }

  /** All right trials behind the voices. */
  public int trialCount() {
    return Arrays.stream(trials).sum();
  }

  /** Only the voices marked. */
  public VoiceSet keep(boolean[] marked) {
    int[] kept = IntStream.range(0, size()).filter(i -> marked[i]).toArray();
    return kept.length == size()
        ? this
        : new VoiceSet(
            measure,
            Arrays.stream(kept).mapToLong(i -> members[i]).toArray(),
            Arrays.stream(kept).mapToDouble(i -> values[i]).toArray(),
            Arrays.stream(kept).map(i -> trials[i]).toArray());
  }
}
