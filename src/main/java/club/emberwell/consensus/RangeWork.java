package club.emberwell.consensus;

import club.emberwell.catalog.Cautions;
import club.emberwell.consensus.answer.OnMyMachine;
import club.emberwell.consensus.dose.BetweenMembers;
import club.emberwell.consensus.dose.Window;
import club.emberwell.consensus.range.Group;
import club.emberwell.consensus.range.Range;
import club.emberwell.consensus.range.RangeKey;
import club.emberwell.laser.Laser;
import club.emberwell.search.query.Facet;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Works a group out in full; pure.
 *
 * @param mine the reader's machine; empty where none was asked about
 * @param spacingMm line spacing the reader would use, or null
 */
record RangeWork(Cautions cautions, Optional<Laser> mine, Double spacingMm) {

  /**
   * Everything but borrowing and explanations.
   *
   * @param relatives works that differ from it in one part, by that part
   */
  RangeDetail full(Group group, Map<Facet, List<Group>> relatives) {
    Range core = Range.of(group);
    Window window = Window.of(group, core.dose());
    Disagreement disagreement = Disagreement.of(group, core.dose());
    Range range = disagreement.found() ? core.split() : core;
    return new RangeDetail(
        range,
        Optional.of(
            new RangeDetail.Findings(
                window,
                BetweenMembers.of(group, core.dose()),
                disagreement,
                Contrasts.of(group, relatives))),
        Optional.empty(),
        mine.map(laser -> OnMyMachine.of(group, range, window, laser, spacingMm)),
        WorkCautions.of(group, cautions),
        Optional.empty());
  }

  /** The core alone, for the smaller groups of a wide search; cautions are never left out. */
  RangeDetail core(Group group) {
    return RangeDetail.core(Range.of(group)).with(WorkCautions.of(group, cautions));
  }

  /** Nobody did exactly this: an empty range that only borrows. */
  RangeDetail alone(RangeKey key, Group lender, Borrowing borrowing) {
    Group nobody = new Group(key, lender.columns(), new int[0]);
    return RangeDetail.core(Range.of(nobody))
        .with(WorkCautions.of(lender, cautions))
        .with(Optional.of(borrowing));
  }
}
