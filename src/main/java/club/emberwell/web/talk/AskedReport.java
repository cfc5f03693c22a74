package club.emberwell.web.talk;

import club.emberwell.catalog.store.CatalogService;
import club.emberwell.member.Actor;
import club.emberwell.report.ReportService;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.report.StoredReport;
import club.emberwell.report.reading.TrialSnapshot;
import club.emberwell.report.reading.WorkProperty;
import club.emberwell.talk.TalkLimits;
import club.emberwell.web.trial.ReportText;
import club.emberwell.web.trial.TrialText;
import club.emberwell.web.trial.WorkText;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;

/** What a report brings along into a question about it, so that nobody types it again. */
@ApplicationScoped
class AskedReport {
  private final ReportService reports;
  private final CatalogService catalog;

  AskedReport(ReportService reports, CatalogService catalog) {
    this.reports = reports;
    this.catalog = catalog;
  }

  /** Values of the question's fields. */
  Map<String, String> values(UUID id, Actor actor) {
    StoredReport report = reports.get(actor, id);
    ReportSnapshot s = report.snapshot();
    Map<String, String> values = new LinkedHashMap<>();
    values.put(TalkForm.TITLE, title(s, actor));
    values.put(TalkForm.TEXT, text(report, actor));
    put(values, TalkForm.MATERIAL, s.work().typed(WorkProperty.MATERIAL));
    put(values, TalkForm.COATING, s.work().typed(WorkProperty.COATING));
    values.put(TalkForm.SOURCE, s.laser().source().code());
    values.put(TalkForm.PROCESS, s.process().code());
    put(values, TalkForm.MODEL, s.machine().model());
    put(values, TalkForm.CONTROLLER, s.work().typed(WorkProperty.CONTROLLER_VERSION));
    values.put(TalkForm.REPORT, s.id().toString());
    return values;
  }

  private static void put(Map<String, String> values, String name, String text) {
    if (text != null) {
      values.put(name, text);
    }
  }

  /** "Birch plywood, cut: too little. What should I change?", of others' "About a result of …". */
  private String title(ReportSnapshot s, Actor actor) {
    String about =
        "%s, %s: %s"
            .formatted(
                WorkText.of(s, catalog.vocabulary(), actor.units()),
                s.process().label().toLowerCase(Locale.ROOT),
                ReportText.outcome(s));
    String title =
        actor.is(s.author().id())
            ? about + ". What should I change?"
            : "About a result of " + s.author().handle() + ": " + about;
    return title.length() <= TalkLimits.TITLE ? title : title.substring(0, TalkLimits.TITLE);
  }

  private String text(StoredReport report, Actor actor) {
    ReportSnapshot s = report.snapshot();
    List<String> lines = new ArrayList<>();
    lines.add("- Laser: " + TrialText.laser(s.laser(), actor.units()));
    TrialSnapshot best = ReportText.best(s).get(0);
    lines.add(
        (s.trials().size() == 1 ? "- Settings: " : "- Best of the grid: ")
            + ReportText.line(best, actor.units()));
    List<String> defects = TrialText.defects(best, catalog.vocabulary());
    lines.add(
        "- Result: "
            + ReportText.outcome(s)
            + (defects.isEmpty() ? "" : " (" + String.join(", ", defects) + ")"));
    if (!report.photos().isEmpty()) {
      lines.add("- Photos: [" + report.photos().size() + "](/reports/" + s.id() + "#photos)");
    }
    return "\n\n" + String.join("\n", lines) + "\n";
  }
}
