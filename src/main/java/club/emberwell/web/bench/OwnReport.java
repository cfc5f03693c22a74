package club.emberwell.web.bench;

import club.emberwell.catalog.Vocabulary;
import club.emberwell.entry.EntryState;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.report.reading.TrialSnapshot;
import club.emberwell.web.trial.TrialText;
import club.emberwell.web.trial.WorkText;
import java.time.Instant;
import java.util.UUID;

/**
 * One of one's own reports in a few lines.
 *
 * @param state in words, empty for a report that everybody sees
 * @param more further trials
 */
record OwnReport(
    UUID id,
    String work,
    String process,
    String machine,
    String state,
    First first,
    int more,
    Instant posted) {
  /** Its first trial. */
  record First(String settings, String effect, String effectClass) {}

  static OwnReport of(ReportSnapshot report, Vocabulary vocabulary, UnitPreferences reader) {
    TrialSnapshot first = report.trials().get(0);
    return new OwnReport(
        report.id(),
        WorkText.of(report, vocabulary, reader),
        report.process().label(),
        report.machine().name() == null
            ? TrialText.laser(report.laser(), reader)
            : report.machine().name(),
        inWords(report.state()),
        new First(
            TrialText.settings(first, reader),
            first.effect().label(),
            TrialText.effectClass(first.effect())),
        report.trials().size() - 1,
        report.createdAt());
  }

  private static String inWords(EntryState state) {
    return switch (state) {
      case LIVE -> "";
      case WAITING -> "waits for approval by a moderator";
      case HELD -> "held by a moderator";
      case REMOVED -> "removed by a moderator";
      case WITHDRAWN -> "withdrawn by you";
    };
  }
}
