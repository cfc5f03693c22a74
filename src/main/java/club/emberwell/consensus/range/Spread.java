package club.emberwell.consensus.range;

import club.emberwell.search.query.Measure;
import club.emberwell.stats.Interval;
import club.emberwell.stats.MedianInterval;
import club.emberwell.stats.ModifiedZ;
import club.emberwell.stats.NextMemberInterval;
import club.emberwell.stats.Quantiles;
import java.util.Optional;
import java.util.Set;

/**
 * How the voices of one measure lie, canonical units. Quartiles are Hyndman-Fan type 8 over voices.
 *
 * @param n right trials that state the measure, those set aside left out
 * @param voices one value per member, those set aside left out
 * @param quantiles min, 10, 25, 50, 75, 90 percent, max; empty below 3 voices (dots only)
 * @param medianInterval of the middle at 95 %; exists from 6 voices
 * @param nextMember where the first right trial of one more member lands, with its own probability;
 *     over the trials of all, those set aside too; from 3 members
 * @param aside voices whose modified z on logs is beyond 3.5 (from 8 voices): named, drawn hollow,
 *     counted apart
 */
public record Spread(
    Measure measure,
    int n,
    VoiceSet voices,
    Optional<Quantiles.Seven> quantiles,
    Optional<Interval> medianInterval,
    Optional<Interval> nextMember,
    VoiceSet aside) {

  /** Fewest voices of which a range is shown. */
  public static final int FEWEST = 3;

  /** A setting this many times off the middle can be set aside (own rule, no source). */
  static final double FAR = 3;

  private static final Set<Measure> DOSES = Set.of(Measure.AREAL_DOSE, Measure.LINE_DOSE);

  public static Spread of(Group group, Measure measure) {
    return of(RightTrials.of(group), measure);
  }

  static Spread of(RightTrials right, Measure measure) {
    VoiceSet.Stated stated = VoiceSet.of(right, measure);
    VoiceSet all = stated.voices();
    boolean[] suspect = suspects(all);
    boolean[] kept = new boolean[suspect.length];
    for (int i = 0; i < kept.length; i++) {
      kept[i] = !suspect[i];
    }
    VoiceSet voices = all.keep(kept);
    double[] values = voices.values();
    return new Spread(
        all.measure(),
        voices.trialCount(),
        voices,
        values.length < FEWEST ? Optional.empty() : Optional.of(Quantiles.seven(values)),
        MedianInterval.of(values),
        NextMemberInterval.band(all.trials(), stated.trials(), stated.n()),
        all.keep(suspect));
  }

  /**
   * Logs need positive values; a focus offset has none to be judged by. Many members set the same
   * round numbers, so the usual deviation of a setting can be next to nothing: a setting must also
   * be far off by a factor, which every slip of units is.
   */
  private static boolean[] suspects(VoiceSet all) {
    for (double value : all.values()) {
      if (value <= 0) {
        return new boolean[all.size()];
      }
    }
    boolean[] suspects = ModifiedZ.suspects(all.values());
    if (!DOSES.contains(all.measure())) {
      double median = Quantiles.median(all.values());
      for (int i = 0; i < suspects.length; i++) {
        double times = all.values()[i] / median;
        suspects[i] &= Math.max(times, 1 / times) >= FAR;
      }
    }
    return suspects;
  }

  /** Upper over lower end of the middle's interval; NaN where there is none. */
  public double intervalRatio() {
    return medianInterval.map(Interval::ratio).orElse(Double.NaN);
  }

  public boolean isEmpty() {
    return voices.size() == 0 && aside.size() == 0;
  }
}
