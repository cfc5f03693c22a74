package club.emberwell.consensus.range;

import club.emberwell.search.query.Measure;
import java.util.Arrays;

/**
 * One value per member for one measure: the median of the member's right trials that state it.
 *
 * @param members numbers of the members, ascending
 * @param values in the measure's canonical unit, same order
 * @param trials how many right trials stand behind each value
 */
public record VoiceSet(Measure measure, long[] members, double[] values, int[] trials) {

  public static VoiceSet of(Group group, Measure measure) {
    return of(RightTrials.of(group), measure);
  }

  /** Members need not have stated every setting, so each measure has its own voices. */
  static VoiceSet of(RightTrials right, Measure measure) {
    double[] column = right.group().columns().values(measure);
    int most = right.members().length;
    long[] members = new long[most];
    double[] values = new double[most];
    int[] trials = new int[most];
    double[] own = new double[16];
    int voices = 0;
    for (int m = 0; m < most; m++) {
      int end = right.starts()[m + 1];
      if (end - right.starts()[m] > own.length) {
        own = new double[end - right.starts()[m]];
      }
      int count = 0;
      for (int i = right.starts()[m]; i < end; i++) {
        double value = column[right.rows()[i]];
        if (!Double.isNaN(value)) {
          own[count++] = value;
        }
      }
      if (count > 0) {
        members[voices] = right.members()[m];
        values[voices] = median(own, count);
        trials[voices++] = count;
      }
    }
    return new VoiceSet(
        measure,
        Arrays.copyOf(members, voices),
        Arrays.copyOf(values, voices),
        Arrays.copyOf(trials, voices));
  }

  private static double median(double[] own, int count) {
    if (count == 1) {
      return own[0];
    }
    Arrays.sort(own, 0, count);
    int half = count / 2;
    return count % 2 == 1 ? own[half] : (own[half - 1] + own[half]) / 2;
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
    int[] kept = java.util.stream.IntStream.range(0, size()).filter(i -> marked[i]).toArray();
    return new VoiceSet(
        measure,
        Arrays.stream(kept).mapToLong(i -> members[i]).toArray(),
        Arrays.stream(kept).mapToDouble(i -> values[i]).toArray(),
        Arrays.stream(kept).map(i -> trials[i]).toArray());
  }
}
