package club.emberwell.report.reading;

import club.emberwell.catalog.Ban;
import club.emberwell.catalog.Cautions;
import java.util.Optional;
import java.util.stream.Stream;

/** Prohibited work takes no settings, whether it was filed or is only named in the words. */
final class HazardStep implements ReportInterpreter.Step {
  @Override
  public void read(Draft draft) {
    Cautions cautions = draft.catalog.cautions();
    draft.ban =
        cautions
            .ban(
                draft.work.material().slug(),
                draft.work.coating().slug(),
                draft.work.process(),
                draft.work.thicknessMm())
            .or(() -> namedInWords(draft.work, cautions));
  }

  private static Optional<Ban> namedInWords(Work work, Cautions cautions) {
    return Stream.of(work.material(), work.coating())
        .filter(Filed::waits)
        .flatMap(
            filed ->
                cautions.banInText(filed.written(), work.process(), work.thicknessMm()).stream())
        .findFirst();
  }
}
