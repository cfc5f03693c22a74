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
 * @param stated the values of those trials, a member's side by side, same order
 */
public record VoiceSet(
    Measure measure, long[] members, double[] values, int[] trials, double[] stated) {

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
    double[] stated = new double[right.rows().length];
    int all = 0;
    int voices = 0;
    for (int m = 0; m < most; m++) {
      int end = right.starts()[m + 1];
      int from = all;
      for (int i = right.starts()[m]; i < end; i++) {
        double value = column[right.rows()[i]];
        if (!Double.isNaN(value)) {
          stated[all++] = value;
        }
      }
      int count = all - from;
      if (count > 0) {
        members[voices] = right.members()[m];
        values[voices] = median(stated, from, count);
        trials[voices++] = count;
      }
    }
    return new VoiceSet(
        measure,
        Arrays.copyOf(members, voices),
        Arrays.copyOf(values, voices),
        Arrays.copyOf(trials, voices),
        Arrays.copyOf(stated, all));
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
    double[] own = new double[stated.length];
    int all = 0;
    int from = 0;
    for (int i = 0; i < size(); i++) {
      if (marked[i]) {
        System.arraycopy(stated, from, own, all, trials[i]);
        all += trials[i];
      }
      from += trials[i];
    }
    return new VoiceSet(
        measure,
        Arrays.stream(kept).mapToLong(i -> members[i]).toArray(),
        Arrays.stream(kept).mapToDouble(i -> values[i]).toArray(),
        Arrays.stream(kept).map(i -> trials[i]).toArray(),
        Arrays.copyOf(own, all));
  }
}
