package club.emberwell.web.answer;

import club.emberwell.bench.Machine;
import club.emberwell.consensus.Borrowing;
import club.emberwell.consensus.RangeDetail;
import club.emberwell.consensus.answer.Start;
import club.emberwell.consensus.answer.Why;
import club.emberwell.consensus.range.Range;
import club.emberwell.web.answer.AnswerView.Evidence;
import club.emberwell.web.range.RangeView;
import java.util.List;
import java.util.Optional;

/** How sure an answer is, in words with counts. */
final class EvidenceWords {
  private EvidenceWords() {}

  static Evidence of(RangeDetail one, Optional<Machine> machine) {
    Range range = one.range();
    List<Why> why =
        one.answer().flatMap(answer -> answer.start()).map(Start::why).orElse(List.of());
    boolean spot = why.contains(Why.MY_SPOT);
    return new Evidence(
        word(range),
        RangeView.evidenceClass(range.evidence()),
        one.findings().isEmpty()
            ? one.borrowing().map(EvidenceWords::borrowed).orElse("")
            : "%s, %s, %s."
                .formatted(
                    RangeView.counted(range.counts().voices(), "member", "members"),
                    RangeView.counted(range.counts().trials(), "test", "tests"),
                    RangeView.counted(range.counts().machines(), "machine", "machines")),
        why.stream().map(Why::sentence).toList(),
        spot ? machine.map(m -> "/bench/machines/" + m.id()).orElse(null) : null);
  }

  private static String word(Range range) {
    return switch (range.evidence()) {
      case NOTHING_YET -> "borrowed";
      case ONE_VOICE -> "one member";
      case TWO_VOICES -> "two members";
      case SPLIT -> "two groups";
      default -> range.evidence().words() + " evidence";
    };
  }

  private static String borrowed(Borrowing found) {
    return "Nobody posted exactly this. Borrowed from %s: %s on %s works like it."
        .formatted(
            found.lenders().words(),
            RangeView.counted(found.lenders().members(), "member", "members"),
            found.lenders().relatives());
  }
}
