package club.emberwell.api.view;

import club.emberwell.api.view.ReportJson.Beside;
import club.emberwell.api.view.ReportJson.Maker;
import club.emberwell.api.view.ReportJson.Standing;
import club.emberwell.api.view.ReportJson.UsedMachine;
import club.emberwell.api.view.ReportJson.WorkJson;
import club.emberwell.api.view.TrialJson.Tried;
import club.emberwell.catalog.Catalog;
import club.emberwell.catalog.CautionMark;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.laser.LaserSource;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.report.ReportSnapshot.Burner;
import club.emberwell.report.StoredReport;
import club.emberwell.report.TriedByOthers;
import club.emberwell.report.photo.Photo;
import club.emberwell.report.reading.Filed;
import club.emberwell.report.reading.ReportCautions;
import club.emberwell.report.reading.Work;
import club.emberwell.report.reading.WorkValue;
import club.emberwell.report.reading.WrittenReport;
import club.emberwell.report.reading.WrittenTrial;
import club.emberwell.report.reading.WrittenWork;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.IntStream;

/** Makes JSON of reports. */
@ApplicationScoped
public class ReportViews {
  public static final String PATH = "/api/v1/reports";

  private final CatalogService catalog;

  ReportViews(CatalogService catalog) {
    this.catalog = catalog;
  }

  /** Where a report is read. */
  public static String path(UUID id) {
    return PATH + "/" + id;
  }

  /** A report among others: normalised values, without what was typed, cautions and remarks. */
  public ReportJson hit(ReportSnapshot report) {
    return among(report, report.beside().comments());
  }

  /** The same for a copy, which is not told of comments: they change no report. */
  public ReportJson copied(ReportSnapshot report) {
    return among(report, null);
  }

  private ReportJson among(ReportSnapshot report, Integer comments) {
    Photo photo = report.beside().photo();
    PhotoJson first = photo == null ? null : PhotoJson.of(photo);
    Beside beside = new Beside(null, report.photos(), first, comments, null, null, null);
    return json(report, null, beside);
  }

  /** A report by itself, with everything. */
  public ReportJson whole(StoredReport report, TriedByOthers tried) {
    List<PhotoJson> photos = PhotoJson.all(report.photos());
    ReportSnapshot snapshot = report.snapshot();
    return json(
        snapshot,
        report,
        new Beside(
            photos,
            null,
            null,
            snapshot.beside().comments(),
            tried,
            cautions(snapshot),
            Noticed.of(report.remarks())));
  }

  /** A report to take along: with what was typed, without what only its page needs. */
  ReportJson shared(StoredReport report) {
    Beside beside = new Beside(null, report.snapshot().photos(), null, null, null, null, null);
    return json(report.snapshot(), report, beside);
  }

  /** The cautions of a report's work. */
  public List<CautionJson> cautions(ReportSnapshot r) {
    return ReportCautions.of(r.work(), r.laser().source(), catalog.snapshot().cautions()).stream()
        .map(CautionJson::of)
        .toList();
  }

  private ReportJson json(ReportSnapshot r, StoredReport stored, Beside beside) {
    WrittenReport written = stored == null ? null : stored.written();
    boolean plain = r.trials().size() == 1 && r.trials().get(0).row() == null;
    return new ReportJson(
        new Standing(
            r.id(),
            r.version(),
            r.state(),
            r.standing().licence(),
            stored == null ? null : stored.origin().address(),
            r.repeatOf()),
        new Times(r.createdAt(), r.updatedAt()),
        new Maker(
            MemberJson.of(r.author().id(), r.author().handle()),
            machine(r.machine()),
            LaserJson.of(r.laser())),
        work(r.work(), r.laser().source(), written == null ? null : written.work()),
        plain ? Tried.of(r.trials().get(0), written(written, 0)) : null,
        plain ? null : trials(r, written),
        beside);
  }

  private static UsedMachine machine(Burner used) {
    return used.id() == null ? null : new UsedMachine(used.id(), used.name(), used.model());
  }

  /**
   * What was done to what.
   *
   * @param source of the laser it was done with
   * @param written what was typed, null where it is not at hand
   */
  public WorkJson work(Work work, LaserSource source, WrittenWork written) {
    Catalog now = catalog.snapshot();
    Vocabulary words = now.vocabulary();
    Map<String, Object> values = new LinkedHashMap<>();
    work.values()
        .forEach(
            (property, value) -> {
              WorkValue may = property.value();
              values.put(
                  property.code(),
                  switch (may.shape()) {
                    case WORD -> WordJson.of(words, may.vocabulary(), (Filed) value);
                    case QUANTITY ->
                        QuantityJson.of(
                            may.kind(),
                            (Double) value,
                            written == null ? null : written.quantity(property));
                    case TEXT, LINES -> value;
                  });
            });
    List<String> codes =
        CautionMark.of(ReportCautions.of(work, source, now.cautions()))
            .map(CautionMark::codes)
            .orElse(List.of());
    return new WorkJson(work.process(), codes, values);
  }

  private static List<TrialJson> trials(ReportSnapshot r, WrittenReport written) {
    return IntStream.range(0, r.trials().size())
        .mapToObj(i -> TrialJson.of(r.trials().get(i), written(written, i)))
        .toList();
  }

  private static WrittenTrial written(WrittenReport report, int trial) {
    return report == null ? null : report.trials().get(trial);
  }
}
