package club.emberwell.api.view;

import club.emberwell.api.view.ReportJson.Author;
import club.emberwell.api.view.ReportJson.PhotoJson;
import club.emberwell.api.view.ReportJson.UsedMachine;
import club.emberwell.catalog.Catalog;
import club.emberwell.catalog.CatalogService;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.quantity.WrittenQuantity;
import club.emberwell.report.Photo;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.report.StoredReport;
import club.emberwell.report.TrialSnapshot;
import club.emberwell.report.WrittenReport;
import club.emberwell.report.WrittenTrial;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Locale;
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
    return json(report, null, null, report.photos(), null);
  }

  /** A report by itself, with everything. */
  public ReportJson whole(StoredReport report) {
    List<PhotoJson> photos = report.photos().stream().map(ReportViews::photo).toList();
    return json(report.snapshot(), report, photos, null, cautions(report.snapshot()));
  }

  /** The cautions of a report's work. */
  public List<CautionJson> cautions(ReportSnapshot r) {
    return catalog
        .snapshot()
        .cautions()
        .forWork(
            r.work().material().slug(),
            r.work().coating().slug(),
            r.process(),
            r.work().thicknessMm(),
            r.laser().source())
        .stream()
        .map(CautionJson::of)
        .toList();
  }

  /** A picture and where to load it. */
  public static PhotoJson photo(Photo photo) {
    String url = path(photo.reportId()) + "/photos/" + photo.id();
    return new PhotoJson(photo.id(), url, url + "?size=thumb", photo.width(), photo.height());
  }

  private ReportJson json(
      ReportSnapshot r,
      StoredReport stored,
      List<PhotoJson> photos,
      Integer photoCount,
      List<CautionJson> cautions) {
    Catalog now = catalog.snapshot();
    Vocabulary words = now.vocabulary();
    WrittenReport written = stored == null ? null : stored.written();
    WrittenQuantity thickness = written == null ? null : written.work().thickness();
    TrialJson only = plain(r) ? trial(r, written, 0) : null;
    return new ReportJson(
        r.id(),
        r.version(),
        r.state().name().toLowerCase(Locale.ROOT),
        new Author(r.author().id(), r.author().handle()),
        r.machine().id() == null ? null : new UsedMachine(r.machine().id(), r.machine().name()),
        LaserJson.of(r.laser()),
        WordJson.of(
            words, TermKind.MATERIAL, r.work().material().slug(), r.work().material().written()),
        WordJson.of(
            words, TermKind.COATING, r.work().coating().slug(), r.work().coating().written()),
        WordJson.of(words, TermKind.COLOUR, r.work().colour().slug(), r.work().colour().written()),
        QuantityJson.of(QuantityKind.THICKNESS, r.work().thicknessMm(), thickness),
        r.process().code(),
        only == null ? null : only.settings(),
        only == null ? null : only.derived(),
        only == null ? null : only.effect(),
        only == null ? null : only.quality(),
        only == null ? null : only.defects(),
        only != null ? null : trials(r, written),
        r.particulars().notes(),
        r.particulars().lot(),
        r.particulars().controllerVersion(),
        r.repeatOf(),
        stored == null ? null : stored.origin().address(),
        photos,
        photoCount,
        cautions,
        stored == null ? null : RemarkJson.warnings(stored.remarks()),
        stored == null ? null : RemarkJson.notes(stored.remarks()),
        r.createdAt(),
        r.updatedAt());
  }

  private static boolean plain(ReportSnapshot report) {
    return report.trials().size() == 1 && report.trials().get(0).row() == null;
  }

  private static List<TrialJson> trials(ReportSnapshot r, WrittenReport written) {
    return IntStream.range(0, r.trials().size()).mapToObj(i -> trial(r, written, i)).toList();
  }

  private static TrialJson trial(ReportSnapshot r, WrittenReport written, int i) {
    TrialSnapshot read = r.trials().get(i);
    WrittenTrial typed = written == null ? null : written.trials().get(i);
    return TrialJson.of(read, typed);
  }
}
