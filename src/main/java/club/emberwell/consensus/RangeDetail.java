package club.emberwell.consensus;

import club.emberwell.catalog.Caution;
import club.emberwell.consensus.answer.Answer;
import club.emberwell.consensus.answer.OnMyMachine;
import club.emberwell.consensus.dose.BetweenMembers;
import club.emberwell.consensus.dose.Window;
import club.emberwell.consensus.factor.OnThisWork;
import club.emberwell.consensus.range.Range;
import java.util.List;
import java.util.Optional;

/**
 * A range with everything worked out.
 *
 * @param range its evidence says {@code split} where camps were found
 * @param findings empty where the group was not worked out further
 * @param borrowing beside too few voices
 * @param forMachine where a machine was asked about
 * @param answer where the range was worked out further
 * @param cautions of the work, bans first; never says that something is safe
 * @param explanation where asked for
 */
public record RangeDetail(
    Range range,
    Optional<Findings> findings,
    Optional<Borrowing> borrowing,
    Optional<OnMyMachine> forMachine,
    Optional<Answer> answer,
    List<Caution> cautions,
    Optional<Explanation.All> explanation) {

  /**
   * What a group's trials say beyond their spread.
   *
   * @param contrasts the clearest first
   */
  public record Findings(
      Window window, BetweenMembers between, Disagreement disagreement, List<Contrast> contrasts) {}

  /**
   * The one middle that everything about a range uses: start, line in the window, centre of a grid.
   *
   * @param dose canonical unit
   * @param drawn toward relatives, because there are few voices or none
   */
  public record Middle(double dose, boolean drawn) {}

  /** Empty below 3 voices where nothing could be borrowed. */
  public Optional<Middle> middle() {
    return borrowing
        .map(borrowed -> new Middle(borrowed.value(), true))
        .or(() -> range.dose().quantiles().map(q -> new Middle(q.median(), false)));
  }

  /**
   * The chance of right at a dose for the machine it was worked out for, else for one more member;
   * empty where it is not known.
   */
  public Optional<Double> chance(double dose) {
    double times = answer.flatMap(Answer::factor).map(OnThisWork::times).orElse(1.0);
    return findings.flatMap(found -> found.window().chance(dose / times));
  }

  /** Only the core: for the smaller groups of a wide search and for comparisons. */
  public static RangeDetail core(Range range) {
    return new RangeDetail(
        range,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        List.of(),
        Optional.empty());
  }

  RangeDetail with(Optional<Borrowing> borrowed) {
    return new RangeDetail(range, findings, borrowed, forMachine, answer, cautions, explanation);
  }

  RangeDetail with(Optional<OnMyMachine> mine, Answer found) {
    return new RangeDetail(
        range, findings, borrowing, mine, Optional.of(found), cautions, explanation);
  }

  RangeDetail with(List<Caution> found) {
    return new RangeDetail(range, findings, borrowing, forMachine, answer, found, explanation);
  }

  RangeDetail with(Explanation.All opened) {
    return new RangeDetail(
        range, findings, borrowing, forMachine, answer, cautions, Optional.of(opened));
  }
}
