package club.emberwell.web.sample;

import club.emberwell.catalog.Catalog;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.entry.EntryKind;
import club.emberwell.entry.EntryState;
import club.emberwell.grid.Grid;
import club.emberwell.grid.GridService;
import club.emberwell.member.Actor;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.report.ReportSource;
import club.emberwell.report.reading.ReportCautions;
import club.emberwell.report.reading.TrialSnapshot;
import club.emberwell.sample.Sample;
import club.emberwell.sample.WrittenSample;
import club.emberwell.web.caution.MarkView;
import club.emberwell.web.sample.SampleCard.Shows;
import club.emberwell.web.trial.TrialText;
import club.emberwell.web.trial.WorkText;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Puts samples into words for their owner. */
@ApplicationScoped
class SampleViews {
  private final ReportSource reports;
  private final GridService grids;
  private final CatalogService catalog;

  SampleViews(ReportSource reports, GridService grids, CatalogService catalog) {
    this.reports = reports;
    this.grids = grids;
    this.catalog = catalog;
  }

  /** With the reports they show; a grid's details stand on the page of one sample only. */
  List<SampleCard> cards(Actor actor, List<Sample> samples) {
    List<UUID> ids =
        samples.stream().map(s -> s.written().report()).filter(Objects::nonNull).toList();
    Map<UUID, ReportSnapshot> found =
        ids.isEmpty()
            ? Map.of()
            : reports.byIds(ids).stream()
                .collect(Collectors.toMap(ReportSnapshot::id, Function.identity()));
    return samples.stream().map(s -> card(s, shows(actor, s.written(), found))).toList();
  }

  private Shows shows(Actor actor, WrittenSample written, Map<UUID, ReportSnapshot> found) {
    if (written.grid() != null) {
      String href = EntryKind.GRID.path(written.grid(), null);
      return new Shows(href, "Test grid", "", "", "", "", null, null);
    }
    ReportSnapshot report = written.report() == null ? null : found.get(written.report());
    return report == null ? null : report(actor, report);
  }

  SampleCard card(Actor actor, Sample sample) {
    return card(sample, shows(actor, sample.written()));
  }

  /** What a sample shows as far as the actor may see that; null where it shows nothing. */
  Shows shows(Actor actor, WrittenSample written) {
    if (written.grid() != null) {
      return grid(actor, written.grid());
    }
    return written.report() == null
        ? null
        : reports.byIds(List.of(written.report())).stream()
            .findFirst()
            .map(report -> report(actor, report))
            .orElse(null);
  }

  private Shows report(Actor actor, ReportSnapshot report) {
    boolean seen =
        report.state() == EntryState.LIVE
            || actor.is(report.author().id()) && !report.state().gone();
    if (!seen) {
      return null;
    }
    UnitPreferences reader = actor.units();
    Catalog now = catalog.snapshot();
    TrialSnapshot trial = report.trials().get(0);
    boolean single = report.trials().size() == 1;
    String laser = TrialText.laser(report.laser(), reader);
    String name = report.machine().name();
    return new Shows(
        EntryKind.REPORT.path(report.id(), null),
        report.process().label(),
        WorkText.of(report, now.vocabulary(), reader),
        name == null ? laser : name + " (" + laser + ")",
        single ? TrialText.settings(trial, reader) : report.trials().size() + " tests",
        single ? trial.effect().label() : "",
        MarkView.of(ReportCautions.of(report.work(), report.laser().source(), now.cautions())),
        single
            ? "/recipes/new?report=" + report.id()
            : EntryKind.REPORT.path(report.id(), null) + "#add-test");
  }

  private Shows grid(Actor actor, UUID id) {
    try {
      Grid grid = grids.get(actor, id);
      return new Shows(
          EntryKind.GRID.path(id, null),
          "Test grid",
          grid.name(),
          TrialText.laser(grid.laser(), actor.units()),
          "",
          "",
          null,
          "/recipes/new?grid=" + id);
    } catch (EntryUnknown e) {
      return null;
    }
  }

  private static SampleCard card(Sample sample, Shows shows) {
    WrittenSample w = sample.written();
    String kept =
        Stream.of(w.box(), w.place()).filter(Objects::nonNull).collect(Collectors.joining(", "));
    return new SampleCard(
        sample.id(), sample.version(), sample.tag().text(), sample.title(), kept, w.notes(), shows);
  }
}
