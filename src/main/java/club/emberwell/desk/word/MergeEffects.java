package club.emberwell.desk.word;

import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.catalog.store.MergeCare;
import club.emberwell.catalog.store.MergePreview;
import club.emberwell.consensus.ConsensusService;
import club.emberwell.consensus.range.Range;
import club.emberwell.consensus.range.RangeKey;
import club.emberwell.desk.DeskAccess;
import club.emberwell.member.Actor;
import club.emberwell.search.query.Facet;
import club.emberwell.search.query.SearchQuery;
import club.emberwell.stats.Quantiles;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/** Says beforehand what a merge moves and how the ranges change. */
@ApplicationScoped
public class MergeEffects {
  private static final int RANGES = 5;

  private final MergeCare merges;
  private final ConsensusService consensus;

  MergeEffects(MergeCare merges, ConsensusService consensus) {
    this.merges = merges;
    this.consensus = consensus;
  }

  /**
   * How much stands behind a range.
   *
   * @param medianDose in the unit of the range's kind of work; null below three voices
   */
  public record Weight(int reports, int trials, int voices, Double medianDose) {
    static final Weight NONE = new Weight(0, 0, 0, null);

    /** The dose as people read it, null where there is none. */
    public String dose() {
      return medianDose == null ? null : "%.3g".formatted(medianDose);
    }

    static Weight of(Range range) {
      Double median =
          range
              .dose()
              .quantiles()
              .map(q -> Quantiles.median(range.dose().voices().values()))
              .orElse(null);
      return new Weight(
          range.counts().reports(), range.counts().trials(), range.counts().voices(), median);
    }
  }

  /** One range of the winner before and after, and the loser's share. */
  public record Shift(RangeKey key, Weight loser, Weight winner, Weight together) {}

  /**
   * What would move.
   *
   * @param loserReports live reports filed under the loser and what lies below it
   * @param shifts the largest ranges first, at most five
   */
  public record Effects(
      MergePreview preview,
      int loserReports,
      int winnerReports,
      int togetherReports,
      List<Shift> shifts) {}

  /** Costs three passes over the index, as long as a search for each of the terms. */
  @Transactional
  public Effects of(Actor actor, TermKind kind, String loser, String winner) {
    DeskAccess.moderates(actor);
    MergePreview preview = merges.preview(kind, loser, winner);
    Vocabulary merged = merges.merged(kind, loser, winner);
    List<Range> lost = ranges(kind, List.of(loser), merged);
    List<Range> won = ranges(kind, List.of(winner), merged);
    List<Range> both = ranges(kind, List.of(loser, winner), merged);
    List<Shift> shifts = new ArrayList<>();
    both.stream()
        .limit(RANGES)
        .forEach(
            range ->
                shifts.add(
                    new Shift(
                        range.key(),
                        weight(lost, range.key()),
                        weight(won, range.key()),
                        Weight.of(range))));
    return new Effects(preview, reports(lost), reports(won), reports(both), List.copyOf(shifts));
  }

  private List<Range> ranges(TermKind kind, List<String> slugs, Vocabulary merged) {
    return Stream.of(Facet.values())
        .filter(facet -> facet.vocabulary().filter(kind::equals).isPresent())
        .map(facet -> SearchQuery.everything().withFacet(facet.code(), slugs))
        .flatMap(query -> consensus.ranges(query, merged).stream())
        .sorted(Comparator.comparingInt((Range range) -> range.counts().reports()).reversed())
        .toList();
  }

  private static Weight weight(List<Range> ranges, RangeKey key) {
    return ranges.stream()
        .filter(r -> r.key().equals(key))
        .findFirst()
        .map(Weight::of)
        .orElse(Weight.NONE);
  }

  private static int reports(List<Range> ranges) {
    return ranges.stream().mapToInt(range -> range.counts().reports()).sum();
  }
}
