package club.emberwell.web.find;

import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.quantity.Dimension;
import club.emberwell.quantity.QuantityPrinter;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.report.TrialSnapshot;
import club.emberwell.search.SearchResult.Hit;
import club.emberwell.web.trial.TrialText;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/**
 * One found report in a few lines.
 *
 * @param work what was worked on: material, coating, colour, thickness
 * @param trials the best matching trials
 * @param more how many further trials match
 */
record HitView(
    String href,
    String work,
    String process,
    List<TrialLine> trials,
    int more,
    String laser,
    String member,
    Instant posted,
    int photos) {
  /** Matching trials shown of one report. */
  static final int TRIALS_IN_SIGHT = 2;

  /** A trial in one line. */
  record TrialLine(
      String settings, String dose, String effect, String effectClass, Integer quality) {}

  static HitView of(Hit hit, Vocabulary vocabulary, UnitPreferences reader) {
    ReportSnapshot report = hit.report();
    List<TrialLine> lines =
        hit.trials().stream()
            .limit(TRIALS_IN_SIGHT)
            .map(i -> line(report.trials().get(i), reader))
            .toList();
    return new HitView(
        "/reports/" + report.id(),
        work(report, vocabulary, reader),
        report.process().label(),
        lines,
        Math.max(0, hit.trials().size() - lines.size()),
        TrialText.laser(report.laser(), reader),
        report.memberHandle(),
        report.createdAt(),
        report.photos());
  }

  private static TrialLine line(TrialSnapshot trial, UnitPreferences reader) {
    return new TrialLine(
        TrialText.settings(trial, reader),
        TrialText.dose(trial, reader),
        trial.effect().label(),
        TrialText.effectClass(trial.effect()),
        trial.quality());
  }

  /** "Birch plywood, 3 mm", "Stainless steel / powder coat / navy". */
  static String work(ReportSnapshot report, Vocabulary vocabulary, UnitPreferences reader) {
    List<String> parts = new ArrayList<>();
    parts.add(label(vocabulary, TermKind.MATERIAL, report.material(), report.materialWritten()));
    if (report.coatingWritten() != null) {
      parts.add(label(vocabulary, TermKind.COATING, report.coating(), report.coatingWritten()));
    }
    if (report.colourWritten() != null) {
      parts.add(label(vocabulary, TermKind.COLOUR, report.colour(), report.colourWritten()));
    }
    String work = String.join(" / ", parts);
    return report.thicknessMm() == null
        ? work
        : work + ", " + QuantityPrinter.print(report.thicknessMm(), Dimension.THICKNESS, reader);
  }

  private static String label(Vocabulary vocabulary, TermKind kind, String slug, String written) {
    return slug == null
        ? "“" + written + "”"
        : vocabulary.successor(kind, slug).map(t -> t.label()).orElse(written);
  }
}
