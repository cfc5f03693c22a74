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
            .ban(draft.material.slug(), draft.coating.slug(), draft.process, draft.thicknessMm)
            .or(() -> namedInWords(draft, cautions));
  }

  private static Optional<Ban> namedInWords(Draft draft, Cautions cautions) {
    return Stream.of(draft.material, draft.coating)
        .filter(Filed::waits)
        .flatMap(
            filed -> cautions.banInText(filed.written(), draft.process, draft.thicknessMm).stream())
        .findFirst();
  }
}
