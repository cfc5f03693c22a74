package club.emberwell.consensus;

import club.emberwell.catalog.Cautions;
import club.emberwell.consensus.dose.BetweenMachines;
import club.emberwell.consensus.dose.OnMyMachine;
import club.emberwell.consensus.dose.Window;
import club.emberwell.consensus.range.Group;
import club.emberwell.consensus.range.Range;
import club.emberwell.consensus.range.RangeKey;
import club.emberwell.laser.Laser;
import java.util.List;
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
   * @param anyColour the group of the same query without its choice of colours
   */
  RangeDetail full(Group group, Group anyColour) {
    Range core = Range.of(group, false);
    Window window = Window.of(group, core.dose());
    Disagreement disagreement = Disagreement.of(group, core.dose());
    Range range = disagreement.found() ? core.split() : core;
    return new RangeDetail(
        range,
        Optional.of(
            new RangeDetail.Findings(
                window,
                BetweenMachines.of(group, core.dose()),
                disagreement,
                Contrasts.of(group, anyColour))),
        Optional.empty(),
        mine.map(laser -> OnMyMachine.of(group, range, window, laser, spacingMm)),
        WorkCautions.of(group, cautions),
        Optional.empty());
  }

  /** The core alone, for the smaller groups of a wide search; cautions are never left out. */
  RangeDetail core(Group group) {
    return RangeDetail.core(Range.of(group, false)).with(WorkCautions.of(group, cautions));
  }

  /** Nobody did exactly this: an empty range that only borrows. */
  RangeDetail alone(Group wider, Borrowing borrowing) {
    Group nobody = new Group(wider.key(), wider.columns(), new int[0]);
    return RangeDetail.core(Range.of(nobody, false))
        .with(WorkCautions.of(wider, cautions))
        .with(Optional.of(borrowing));
  }

  static Optional<Group> find(List<Group> groups, RangeKey key) {
    return groups.stream().filter(group -> group.key().equals(key)).findFirst();
  }
}
