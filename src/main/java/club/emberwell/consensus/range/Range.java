package club.emberwell.consensus.range;

import club.emberwell.search.query.Measure;
import club.emberwell.stats.Evidence;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What peers' right trials say for one key. It describes; it recommends nothing.
 *
 * @param counts what stands behind it
 * @param settings spreads of the settings that anybody stated, in the order of {@link
 *     Measure#SETTINGS}
 * @param dose nominal J/mm2 for area work, J/mm for line work
 * @param success empty where the search itself asked for an effect: then the share means nothing
 */
public record Range(
    RangeKey key,
    Counts counts,
    Evidence evidence,
    List<Spread> settings,
    Spread dose,
    Optional<Success> success) {

  /**
   * How much stands behind a range.
   *
   * @param trials all trials of the key, whatever their effect
   * @param reports they stand in
   * @param voices members with at least one right trial
   * @param machines they were made on
   */
  public record Counts(int trials, int reports, int voices, int machines) {}

  public static Range of(Group group) {
    return of(group, false);
  }

  /**
   * @param effectAsked whether the search that found the trials filters by effect
   */
  public static Range of(Group group, boolean effectAsked) {
    return of(group, effectAsked, Measure.SETTINGS);
  }

  /** Without the spreads of single settings: for lists. */
  public static Range brief(Group group) {
    return of(group, true, List.of());
  }

  private static Range of(Group group, boolean effectAsked, List<Measure> measures) {
    RightTrials right = RightTrials.of(group);
    List<Spread> settings = new ArrayList<>();
    for (Measure measure : measures) {
      Spread spread = Spread.of(right, measure);
      if (!spread.isEmpty()) {
        settings.add(spread);
      }
    }
    Spread dose = Spread.of(right, doseMeasure(group.key()));
    int voices = right.members().length;
    return new Range(
        group.key(),
        new Counts(group.rows().length, group.reports(), voices, group.machines()),
        Evidence.of(voices, dose.intervalRatio(), false),
        List.copyOf(settings),
        dose,
        effectAsked ? Optional.empty() : Optional.of(Success.of(group)));
  }

  /** The same where its voices were found to fall into camps. */
  public Range split() {
    Evidence word = Evidence.of(counts.voices(), dose.intervalRatio(), true);
    return new Range(key, counts, word, settings, dose, success);
  }

  /** The dose by which this kind of work is compared. */
  public static Measure doseMeasure(RangeKey key) {
    return Measure.dose(key.process().doseKind());
  }

  public Optional<Spread> setting(Measure measure) {
    return settings.stream().filter(s -> s.measure() == measure).findFirst();
  }
}
