package club.emberwell.web.find;

import club.emberwell.catalog.Vocabulary;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.report.reading.TrialSnapshot;
import club.emberwell.search.SearchResult.Hit;
import club.emberwell.web.trial.TrialText;
import club.emberwell.web.trial.WorkText;
import java.time.Instant;
import java.util.List;

/**
 * One found report in a few lines.
 *
 * @param work what was worked on: material, coating, colour, thickness
 * @param trials the best matching trials
 * @param more how many further trials match
 * @param tests how many a test grid has; 0 where it is none
 */
record HitView(
    String href,
    String work,
    String process,
    List<TrialLine> trials,
    int more,
    int tests,
    Posted posted,
    int photos) {
  /** By whom, on which laser and when. */
  record Posted(String member, String laser, Instant at) {
    public String getMemberHref() {
      return PersonPages.address(member);
    }
  }

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
        WorkText.of(report, vocabulary, reader),
        report.process().label(),
        lines,
        Math.max(0, hit.trials().size() - lines.size()),
        report.trials().size() > 1 ? report.trials().size() : 0,
        new Posted(
            report.author().handle(), TrialText.laser(report.laser(), reader), report.createdAt()),
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
}
