package club.emberwell.consensus.answer;

import club.emberwell.consensus.factor.OnThisWork;
import club.emberwell.consensus.range.ConsensusLimits;
import club.emberwell.consensus.range.Range;
import club.emberwell.stats.Evidence;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The dose to begin with.
 *
 * @param dose the middle of the range; empty where it has none
 * @param why what makes it uncertain, whatever the machine
 */
public record Target(Optional<Double> dose, Start.Basis basis, List<Why> why) {

  /** Of a range of one's own. */
  public static Target of(Range range, Optional<Double> middle) {
    List<Why> why = new ArrayList<>();
    int voices = range.counts().voices();
    if (voices == 1) {
      why.add(Why.ONE_MEMBER);
    } else if (voices < ConsensusLimits.BORROW_BELOW) {
      why.add(Why.FEW_MEMBERS);
    }
    if (range.evidence() == Evidence.SPLIT) {
      why.add(Why.TWO_GROUPS);
    }
    return new Target(middle, middle.isPresent() ? Start.Basis.MIDDLE : Start.Basis.ONE_TRIAL, why);
  }

  /** For a machine that is known from other works. */
  Target on(OnThisWork factor) {
    return new Target(
        dose.map(middle -> middle * factor.times()),
        basis == Start.Basis.MIDDLE ? Start.Basis.FACTOR : basis,
        why);
  }

  /** Whether it comes from all who did this work. */
  boolean ofAll() {
    return basis == Start.Basis.MIDDLE || basis == Start.Basis.FACTOR;
  }

  /** The dose of whichever trial is followed, as the middle is of machines unlike the reader's. */
  Target ofOneTrial() {
    List<Why> all = new ArrayList<>(why);
    all.add(Why.UNLIKE_MOST);
    return new Target(Optional.empty(), Start.Basis.ONE_TRIAL, all);
  }

  /** Of an estimate from the relatives of a work nobody posted. */
  public static Target borrowed(double dose) {
    return new Target(Optional.of(dose), Start.Basis.BORROWED, List.of(Why.BORROWED));
  }
}
