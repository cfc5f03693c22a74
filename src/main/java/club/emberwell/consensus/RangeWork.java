package club.emberwell.consensus;

import club.emberwell.catalog.Cautions;
import club.emberwell.consensus.answer.Answer;
import club.emberwell.consensus.answer.OnMyMachine;
import club.emberwell.consensus.answer.Reader;
import club.emberwell.consensus.answer.Target;
import club.emberwell.consensus.dose.BetweenMembers;
import club.emberwell.consensus.dose.Dosed;
import club.emberwell.consensus.dose.Window;
import club.emberwell.consensus.factor.OnThisWork;
import club.emberwell.consensus.range.Group;
import club.emberwell.consensus.range.Range;
import club.emberwell.consensus.range.RangeKey;
import club.emberwell.search.query.Facet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/**
 * Works a group out in full; pure.
 *
 * @param spacingMm line spacing the reader would use; null = that of the start
 * @param effectAsked whether the search filters by effect, so that a share of right ones means
 *     nothing
 */
record RangeWork(Cautions cautions, Reader reader, Double spacingMm, boolean effectAsked) {

  RangeWork(Cautions cautions, Reader reader, Double spacingMm) {
    this(cautions, reader, spacingMm, false);
  }

  /**
   * Everything but borrowing and explanations.
   *
   * @param relatives works that differ from it in one part, by that part
   */
  RangeDetail full(Group group, Map<Facet, List<Group>> relatives) {
    Range core = Range.of(group, effectAsked);
    Dosed dosed = Dosed.of(group, core.dose());
    BetweenMembers between = BetweenMembers.of(dosed);
    Disagreement disagreement = Disagreement.of(group, core.dose());
    Range range = disagreement.found() ? core.split() : core;
    return new RangeDetail(
        range,
        Optional.of(
            new RangeDetail.Findings(
                Window.of(dosed, between), between, disagreement, Contrasts.of(group, relatives))),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        WorkCautions.of(group, cautions),
        Optional.empty());
  }

  /** The core alone, for the smaller groups of a wide search; cautions are never left out. */
  RangeDetail core(Group group) {
    return RangeDetail.core(Range.of(group, effectAsked)).with(WorkCautions.of(group, cautions));
  }

  /** Nobody did exactly this: an empty range that only borrows. */
  RangeDetail alone(
      RangeKey key,
      List<Group> lenders,
      Borrowing borrowing,
      Function<Group, Optional<OnThisWork>> factor) {
    Group nobody = new Group(key, lenders.get(0).columns(), new int[0]);
    Group together = Group.together(key, lenders);
    return RangeDetail.core(Range.of(nobody))
        .with(WorkCautions.of(lenders.get(0), cautions))
        .with(Optional.of(borrowing))
        .with(
            Optional.empty(),
            Answer.of(
                together,
                Range.of(together),
                Target.borrowed(borrowing.value()),
                Optional.empty(),
                reader,
                factor.apply(nobody)));
  }

  /**
   * What it means to the reader, once its middle is known.
   *
   * @param factor what the factor of the reader's machine makes of it
   */
  RangeDetail forReader(RangeDetail detail, Group group, Optional<OnThisWork> factor) {
    Range range = detail.range();
    Optional<Double> middle = detail.middle().map(RangeDetail.Middle::dose);
    Optional<Window> window = detail.findings().map(RangeDetail.Findings::window);
    Answer answer = Answer.of(group, range, Target.of(range, middle), window, reader, factor);
    Double spacing =
        spacingMm != null
            ? spacingMm
            : answer.start().map(start -> start.settings().lineSpacingMm()).orElse(null);
    return detail.with(
        Optional.ofNullable(reader.laser())
            .map(
                laser ->
                    OnMyMachine.of(
                        group,
                        new OnMyMachine.Said(
                            range,
                            window.orElseThrow(),
                            middle,
                            factor.map(OnThisWork::times).orElse(1.0)),
                        laser,
                        spacing)),
        answer);
  }
}
