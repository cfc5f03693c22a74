package club.emberwell.web.report;

import club.emberwell.catalog.Catalog;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.entry.EntryState;
import club.emberwell.laser.Effect;
import club.emberwell.laser.dose.DoseFormula;
import club.emberwell.laser.dose.Formula;
import club.emberwell.member.Actor;
import club.emberwell.quantity.QuantityPrinter;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.remark.Severity;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.report.ReportSnapshot.Burner;
import club.emberwell.report.ReportSource;
import club.emberwell.report.StoredReport;
import club.emberwell.report.TriedByOthers;
import club.emberwell.report.photo.Photo;
import club.emberwell.report.reading.ReportCautions;
import club.emberwell.report.reading.TrialSnapshot;
import club.emberwell.search.query.Facet;
import club.emberwell.search.query.SearchQuery;
import club.emberwell.search.query.SearchQueryCodec;
import club.emberwell.web.caution.CautionsView;
import club.emberwell.web.frame.Preview;
import club.emberwell.web.report.ReportPage.Allowed;
import club.emberwell.web.report.ReportPage.Author;
import club.emberwell.web.report.ReportPage.Head;
import club.emberwell.web.report.ReportPage.Kin;
import club.emberwell.web.report.ReportPage.Other;
import club.emberwell.web.report.ReportPage.Result;
import club.emberwell.web.report.ReportPage.Row;
import club.emberwell.web.report.ReportPage.Said;
import club.emberwell.web.report.ReportPage.Told;
import club.emberwell.web.report.ReportPage.Trials;
import club.emberwell.web.report.ReportPage.Work;
import club.emberwell.web.trial.ReportText;
import club.emberwell.web.trial.TrialText;
import club.emberwell.web.trial.WorkText;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.UUID;

/** Composes the page of a report. */
@ApplicationScoped
public class ReportViewer {
  private final CatalogService catalog;
  private final ReportSource source;

  ReportViewer(CatalogService catalog, ReportSource source) {
    this.catalog = catalog;
    this.source = source;
  }

  /**
   * What came of a report.
   *
   * @param ids of reports that repeat it
   */
  public record Repeats(List<UUID> ids, TriedByOthers tried) {
    public static final Repeats NONE = new Repeats(List.of(), new TriedByOthers(0, 0, 0, 0));
  }

  /** A report for a reader. */
  public ReportPage page(StoredReport report, Repeats repeats, Actor actor) {
    ReportSnapshot s = report.snapshot();
    UnitPreferences reader = actor.units();
    Catalog now = catalog.snapshot();
    boolean single = s.trials().size() == 1;
    TrialSnapshot first = s.trials().get(0);
    boolean mine = actor.is(s.author().id());
    boolean stands = s.state() == EntryState.LIVE || s.state() == EntryState.WAITING;
    return new ReportPage(
        new Head(
            s.id().toString(),
            ReportText.title(s, now.vocabulary(), reader),
            s.version(),
            banner(s.state()),
            new Author(
                s.author().handle(), s.standing().licence(), s.createdAt(), s.updatedAt(), mine),
            new Allowed(mine && stands, actor.signedIn() && s.state() == EntryState.LIVE)),
        new Work(
            WorkText.of(s, now.vocabulary(), reader),
            s.process().label(),
            TrialText.laser(s.laser(), reader),
            machine(s.machine())),
        single ? result(first, now) : null,
        new Trials(
            single ? SettingRows.of(report, reader) : List.of(),
            single ? derived(s, first, reader) : List.of(),
            single ? null : Grids.of(s, now.vocabulary(), reader)),
        new Told(
            said(s),
            report.remarks().stream()
                .filter(r -> r.severity() != Severity.ERROR)
                .map(SettingRows::noticed)
                .toList()),
        CautionsView.of(
            ReportCautions.of(s.work(), s.laser().source(), now.cautions()),
            now.vocabulary(),
            reader),
        report.photos(),
        new Kin(
            s.repeatOf() == null
                ? null
                : others(List.of(s.repeatOf()), now, reader).stream().findFirst().orElse(null),
            tried(repeats.tried()),
            others(repeats.ids(), now, reader),
            similar(s)));
  }

  /** What others are told of it. */
  public Preview preview(StoredReport report, Actor actor) {
    ReportSnapshot s = report.snapshot();
    String path = "/reports/" + s.id();
    return Preview.of(path, ReportText.sentence(s, catalog.snapshot(), actor.units()))
        .withDrawn("/preview" + path + ".png")
        .withPhoto(report.photos().stream().findFirst().map(Photo::largeSrc).orElse(null));
  }

  /** “Shed diode”, Tussock 10; null where the laser is described only. */
  private static String machine(Burner used) {
    if (used.name() == null) {
      return null;
    }
    return "“" + used.name() + "”" + (used.model() == null ? "" : ", " + used.model());
  }

  private static Result result(TrialSnapshot trial, Catalog now) {
    return new Result(
        trial.effect().label(),
        TrialText.effectClass(trial.effect()),
        trial.quality(),
        TrialText.defects(trial, now.vocabulary()));
  }

  private static String banner(EntryState state) {
    return switch (state) {
      case LIVE -> null;
      case WAITING ->
          "Waits for approval by a moderator. Until then only you and moderators see it, and it"
              + " does not count.";
      case HELD -> "Held by a moderator while something is checked. It does not count until then.";
      case REMOVED -> "Removed by a moderator. It does not count.";
      case WITHDRAWN -> "Withdrawn by its author. It does not count.";
    };
  }

  private static List<ReportPage.Derived> derived(
      ReportSnapshot s, TrialSnapshot trial, UnitPreferences reader) {
    List<ReportPage.Derived> derived = new ArrayList<>();
    for (DoseFormula formula : DoseFormula.values()) {
      Double value = formula.value(trial.derived());
      if (value != null) {
        Formula how = formula.explain(s.laser(), s.process(), trial.settings());
        derived.add(
            new ReportPage.Derived(
                how.name(),
                number(value, how.unit(), reader),
                how.text(),
                how.inputs().stream()
                    .filter(i -> i.value() != null)
                    .map(i -> new Row(i.symbol(), i.name(), number(i.value(), i.unit(), reader)))
                    .toList(),
                how.source(),
                how.caveats()));
      }
    }
    return derived;
  }

  /** In the units the formula is written in, so that a reader can check it. */
  private static String number(double value, String unit, UnitPreferences reader) {
    String shown = unit.replace("mm2", "mm²").replace("cm2", "cm²").replace("um", "µm");
    String number = QuantityPrinter.number(value, reader.style());
    return shown.isEmpty() ? number : number + " " + shown;
  }

  private static List<Said> said(ReportSnapshot s) {
    List<Said> said = new ArrayList<>();
    s.work()
        .values()
        .forEach(
            (property, value) -> {
              if (value instanceof String text) {
                said.add(new Said(property.label(), text));
              }
            });
    return said;
  }

  private static String tried(TriedByOthers by) {
    if (by.members() == 0) {
      return "";
    }
    List<String> outcomes = new ArrayList<>();
    outcome(outcomes, by.right(), Effect.RIGHT);
    outcome(outcomes, by.tooLittle(), Effect.TOO_LITTLE);
    outcome(outcomes, by.tooMuch(), Effect.TOO_MUCH);
    return "Tried by %s: %s."
        .formatted(
            by.members() == 1 ? "one other" : by.members() + " others",
            String.join(", ", outcomes));
  }

  private static void outcome(List<String> outcomes, int members, Effect effect) {
    if (members > 0) {
      outcomes.add(members + " " + effect.label().toLowerCase(Locale.ROOT));
    }
  }

  private List<Other> others(List<UUID> ids, Catalog now, UnitPreferences reader) {
    if (ids.isEmpty()) {
      return List.of();
    }
    return source.byIds(ids).stream()
        .filter(r -> r.state() == EntryState.LIVE)
        .map(
            r -> {
              TrialSnapshot trial = r.trials().get(0);
              return new Other(
                  "/reports/" + r.id(),
                  r.author().handle()
                      + " on "
                      + TrialText.laser(r.laser(), reader)
                      + ": "
                      + TrialText.settings(trial, reader),
                  trial.effect().label(),
                  TrialText.effectClass(trial.effect()));
            })
        .toList();
  }

  /** The search that finds what others did with the same work. */
  private static String similar(ReportSnapshot s) {
    SearchQuery query = SearchQuery.everything();
    if (s.work().material().slug() == null) {
      query = query.withText(s.work().material().written());
    } else {
      query = query.withFacet(Facet.MATERIAL.code(), List.of(s.work().material().slug()));
    }
    if (s.work().coating().slug() != null) {
      query = query.withFacet(Facet.COATING.code(), List.of(s.work().coating().slug()));
    }
    query = query.withFacet(Facet.PROCESS.code(), List.of(s.process().code()));
    return "/?" + SearchQueryCodec.write(query);
  }
}
