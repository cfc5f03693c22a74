package club.emberwell.stats;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Whether voices fall into two camps: first the recorded properties are tried ({@link
 * PermutationSplit}, Holm-adjusted), then from 15 voices Hartigan's dip ({@link DipTest}), whose
 * camps no recorded property explains. Both at 5 %.
 *
 * @param split the property that parts them; empty where none does
 * @param dip the test that found them unexplained; empty where a property explains them
 */
public record Camps(Optional<PermutationSplit> split, Optional<DipTest> dip) {

  /** Level of both tests. */
  public static final double LEVEL = 0.05;

  /**
   * The camps of voices.
   *
   * @param voices positive values, one per member
   * @param properties as {@link PermutationSplit#of} takes them
   * @return empty where no camps are found
   */
  public static Optional<Camps> of(double[] voices, Map<String, String[]> properties) {
    List<PermutationSplit> splits = PermutationSplit.of(voices, properties);
    if (!splits.isEmpty() && splits.get(0).adjusted() <= LEVEL) {
      return Optional.of(new Camps(Optional.of(splits.get(0)), Optional.empty()));
    }
    return unexplained(voices).map(dip -> new Camps(Optional.empty(), Optional.of(dip)));
  }

  private static Optional<DipTest> unexplained(double[] voices) {
    int n = voices.length;
    if (n < DipTest.FEWEST) {
      return Optional.empty();
    }
    double[] logs = Checked.logs(voices);
    Arrays.sort(logs);
    int run = 1;
    int longest = 1;
    for (int i = 1; i < n; i++) {
      run = logs[i] == logs[i - 1] ? run + 1 : 1;
      longest = Math.max(longest, run);
    }
    // equal values alone raise the dip to half their share: where that is significant, no verdict
    boolean ties = DipTable.standard().pValue(n, longest / (2.0 * n)) <= LEVEL;
    return ties ? Optional.empty() : DipTest.of(logs).filter(test -> test.pValue() <= LEVEL);
  }
}
