package club.emberwell.web.find;

import club.emberwell.catalog.Catalog;
import club.emberwell.entry.EntryState;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.report.reading.ReportCautions;
import club.emberwell.report.reading.TrialSnapshot;
import club.emberwell.search.SearchResult.Hit;
import club.emberwell.web.caution.MarkView;
import club.emberwell.web.trial.TrialText;
import club.emberwell.web.trial.WorkText;
import java.time.Instant;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * One found report in a few lines.
 *
 * @param trials the best matching trials
 * @param more how many further trials match
 * @param tests how many a test grid has; 0 where it is none
 * @param beside how many photos, the first of them, how many comments
 */
public record HitView(
    String href,
    What what,
    List<TrialLine> trials,
    int more,
    int tests,
    Posted posted,
    ReportSnapshot.Beside beside) {
  /**
   * What was done.
   *
   * @param work what was worked on: material, coating, colour, thickness
   * @param mark its heaviest caution, or null
   */
  record What(String work, String process, @Nullable MarkView mark) {}

  public String work() {
    return what.work();
  }

  public String process() {
    return what.process();
  }

  public @Nullable MarkView mark() {
    return what.mark();
  }

  /** The form for a recipe with the settings of the best matching trial. */
  public String getKeep() {
    return "/recipes/new?report=%s&trial=%d"
        .formatted(
            href.substring(href.lastIndexOf('/') + 1),
            trials.isEmpty() ? 0 : trials.get(0).trial());
  }

  /**
   * By whom, on which laser and when.
   *
   * @param member null among one's own, which stand by the name of the machine
   * @param state in words, empty for what everybody sees
   */
  public record Posted(String member, String laser, Instant at, String state) {
    public String getMemberHref() {
      return PersonPages.address(member);
    }
  }

  /** Matching trials shown of one report. */
  static final int TRIALS_IN_SIGHT = 2;

  /**
   * A trial in one line.
   *
   * @param trial which of its report, 0 = the first
   */
  public record TrialLine(
      String settings,
      String dose,
      String effect,
      String effectClass,
      Integer quality,
      int trial) {}

  static HitView of(Hit hit, Catalog now, UnitPreferences reader) {
    ReportSnapshot report = hit.report();
    return of(
        report,
        hit.trials(),
        new Posted(
            report.author().handle(),
            TrialText.laser(report.laser(), reader),
            report.createdAt(),
            ""),
        now,
        reader);
  }

  /** One of the reader's own that was found. */
  public static HitView own(Hit hit, Catalog now, UnitPreferences reader) {
    return of(hit.report(), hit.trials(), own(hit.report(), reader), now, reader);
  }

  /** One of the reader's own, with all its trials. */
  public static HitView own(ReportSnapshot report, Catalog now, UnitPreferences reader) {
    List<Integer> all = IntStream.range(0, report.trials().size()).boxed().toList();
    return of(report, all, own(report, reader), now, reader);
  }

  private static Posted own(ReportSnapshot report, UnitPreferences reader) {
    String machine = report.machine().name();
    return new Posted(
        null,
        machine == null ? TrialText.laser(report.laser(), reader) : machine,
        report.createdAt(),
        inWords(report.state()));
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

  private static HitView of(
      ReportSnapshot report,
      List<Integer> trials,
      Posted posted,
      Catalog now,
      UnitPreferences reader) {
    List<TrialLine> lines =
        trials.stream()
            .limit(TRIALS_IN_SIGHT)
            .map(i -> line(i, report.trials().get(i), reader))
            .toList();
    return new HitView(
        "/reports/" + report.id(),
        new What(
            WorkText.of(report, now.vocabulary(), reader),
            report.process().label(),
            MarkView.of(ReportCautions.of(report.work(), report.laser().source(), now.cautions()))),
        lines,
        trials.size() - lines.size(),
        report.trials().size() > 1 ? report.trials().size() : 0,
        posted,
        report.beside());
  }

  private static TrialLine line(int index, TrialSnapshot trial, UnitPreferences reader) {
    return new TrialLine(
        TrialText.settings(trial, reader),
        TrialText.dose(trial, reader),
        trial.effect().label(),
        TrialText.effectClass(trial.effect()),
        trial.quality(),
        index);
  }
}
