package club.emberwell.web.outside;

import club.emberwell.catalog.Catalog;
import club.emberwell.catalog.CautionMark;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.entry.EntryKind;
import club.emberwell.entry.EntryRef;
import club.emberwell.entry.EntryState;
import club.emberwell.laser.Amount;
import club.emberwell.laser.SettingValue.Choice;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.quantity.QuantityPrinter;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.report.ReportSource;
import club.emberwell.report.reading.ReportCautions;
import club.emberwell.report.reading.TrialSnapshot;
import club.emberwell.talk.SafeHtml;
import club.emberwell.talk.TalkEntry;
import club.emberwell.talk.TalkFinder;
import club.emberwell.talk.TieCautions;
import club.emberwell.web.caution.CautionView;
import club.emberwell.web.caution.CautionsView;
import club.emberwell.web.trial.ReportText;
import club.emberwell.web.trial.TrialText;
import club.emberwell.web.trial.WorkText;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;

/** Entries as readers of feeds see them: all that matters in words and units, the same for all. */
@ApplicationScoped
class FeedItems {
  /** Tests of a grid that are told one by one. */
  private static final int TESTS = 5;

  private static final UnitPreferences READER = UnitPreferences.metric();

  private final CatalogService catalog;
  private final ReportSource reports;
  private final TalkFinder talk;

  FeedItems(CatalogService catalog, ReportSource reports, TalkFinder talk) {
    this.catalog = catalog;
    this.reports = reports;
    this.talk = talk;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance result(Result result);

    static native TemplateInstance talk(SafeHtml html, int answers, String caution);
  }

  /**
   * A report.
   *
   * @param what was done to what with which laser
   * @param settings of a single trial; empty for a grid
   * @param tests of a grid, the best first; empty for a single trial
   * @param more how many tests are not told
   */
  record Result(
      String what,
      String outcome,
      List<String> defects,
      List<Line> settings,
      List<String> tests,
      int more,
      List<CautionView> cautions) {}

  /** Something with its name. */
  record Line(String label, String value) {}

  List<FeedItem> results(Collection<ReportSnapshot> found) {
    return found.stream().map(this::item).toList();
  }

  List<FeedItem> talk(Collection<TalkEntry> found) {
    return found.stream().map(this::item).toList();
  }

  /** Those that are live, in the same order: three statements whatever the size. */
  List<FeedItem> of(List<EntryRef> found) {
    Map<EntryRef, FeedItem> items = new HashMap<>();
    reports.shown(ids(found, Set.of(EntryKind.REPORT))).stream()
        .filter(report -> report.state() == EntryState.LIVE)
        .map(this::item)
        .forEach(item -> items.put(item.ref(), item));
    talk.live(ids(found, EntryKind.TALK)).stream()
        .map(this::item)
        .forEach(item -> items.put(item.ref(), item));
    return found.stream().map(items::get).filter(Objects::nonNull).toList();
  }

  private static List<UUID> ids(List<EntryRef> of, Set<EntryKind> kinds) {
    return of.stream().filter(ref -> kinds.contains(ref.kind())).map(EntryRef::id).toList();
  }

  private FeedItem item(TalkEntry entry) {
    return new FeedItem(
        new EntryRef(entry.kind(), entry.id()),
        entry.written().title(),
        entry.memberHandle(),
        null,
        entry.createdAt(),
        entry.updatedAt(),
        Templates.talk(
                entry.html(),
                entry.answers(),
                TieCautions.of(entry.written().ties(), catalog.cautions())
                    .map(CautionMark::sentence)
                    .orElse(null))
            .render());
  }

  private FeedItem item(ReportSnapshot report) {
    Catalog now = catalog.snapshot();
    return new FeedItem(
        new EntryRef(EntryKind.REPORT, report.id()),
        ReportText.title(report, now.vocabulary(), READER),
        report.author().handle(),
        report.standing().licence(),
        report.createdAt(),
        report.updatedAt(),
        Templates.result(result(report, now)).render());
  }

  private static Result result(ReportSnapshot report, Catalog now) {
    boolean single = report.trials().size() == 1;
    List<TrialSnapshot> best = ReportText.best(report);
    CautionsView cautions =
        CautionsView.of(
            ReportCautions.of(report.work(), report.laser().source(), now.cautions()),
            now.vocabulary(),
            READER);
    return new Result(
        "%s on %s, %s"
            .formatted(
                report.process().label(),
                WorkText.of(report, now.vocabulary(), READER),
                TrialText.laser(report.laser(), READER)),
        ReportText.outcome(report),
        single ? TrialText.defects(best.get(0), now.vocabulary()) : List.of(),
        single ? settings(best.get(0)) : List.of(),
        single
            ? List.of()
            : best.stream()
                .limit(TESTS)
                .map(trial -> ReportText.line(trial, READER) + ": " + ReportText.outcome(trial))
                .toList(),
        single ? 0 : Math.max(0, best.size() - TESTS),
        Stream.concat(cautions.banned().all(), cautions.particular().all()).toList());
  }

  private static List<Line> settings(TrialSnapshot trial) {
    List<Line> lines = new ArrayList<>();
    trial
        .settings()
        .values()
        .forEach(
            (setting, value) ->
                lines.add(
                    new Line(
                        setting.label(),
                        value instanceof Amount amount
                            ? QuantityPrinter.print(amount.number(), amount.kind(), READER)
                            : setting
                                .value()
                                .choice(value)
                                .map(Choice::label)
                                .orElse(value.toString()))));
    if (trial.settings().powerPercent() != null && trial.derived().averagePowerW() != null) {
      lines.add(
          new Line(
              "Average power (nominal)",
              QuantityPrinter.print(trial.derived().averagePowerW(), QuantityKind.POWER, READER)));
    }
    String dose = TrialText.shortDose(trial.derived(), READER);
    if (!dose.isEmpty()) {
      lines.add(new Line("Dose (nominal)", dose));
    }
    return lines;
  }
}
