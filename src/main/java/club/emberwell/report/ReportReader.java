package club.emberwell.report;

import club.emberwell.entry.EntryAccess;
import club.emberwell.entry.EntryLife;
import club.emberwell.entry.Revision;
import club.emberwell.member.Actor;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.report.photo.Photo;
import club.emberwell.report.photo.PhotoRepository;
import club.emberwell.report.reading.Interpretation;
import club.emberwell.report.reading.WrittenReport;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.UUID;

/** Loads whole reports for whoever may see them, in the caller's transaction. */
@ApplicationScoped
public class ReportReader {
  private final ReportRepository reports;
  private final StoredReports source;
  private final EntryLife life;
  private final PhotoRepository photos;

  ReportReader(
      ReportRepository reports, StoredReports source, EntryLife life, PhotoRepository photos) {
    this.reports = reports;
    this.source = source;
    this.life = life;
    this.photos = photos;
  }

  StoredReport whole(UUID id, boolean created) {
    reports.flush();
    ReportSnapshot snapshot =
        source.byIds(List.of(id)).stream()
            .findFirst()
            .orElseThrow(() -> new EntryUnknown("report"));
    return stored(reports.findById(id), snapshot, photos.of(id), created);
  }

  /** A report that was just posted, without a look at the database. */
  StoredReport made(ReportEntity report, ReportNames names, Interpretation read) {
    return stored(report, report.snapshot(names, read.trials(), null), List.of(), true);
  }

  private static StoredReport stored(
      ReportEntity report, ReportSnapshot snapshot, List<Photo> photos, boolean created) {
    return new StoredReport(
        snapshot,
        report.written(),
        report.numberStyle(),
        report.entry().origin(),
        report.remarks(),
        photos,
        created);
  }

  public ReportEntity seen(Actor actor, UUID id) {
    ReportEntity report = reports.whole(id).orElseThrow(() -> new EntryUnknown("report"));
    EntryAccess.see(actor, report.entry());
    return report;
  }

  StoredReport visible(Actor actor, UUID id) {
    seen(actor, id);
    return whole(id, false);
  }

  List<StoredReport> latest(UUID author, int most) {
    return reports.latestOf(author, most).stream().map(id -> whole(id, false)).toList();
  }

  List<Revision<WrittenReport>> history(Actor actor, UUID id) {
    seen(actor, id);
    return life.history(id, WrittenReportConverter.SHAPE);
  }

  List<UUID> repeats(Actor actor, UUID id) {
    seen(actor, id);
    return reports.repeatsOf(id, ReportLimits.REPEATS_SHOWN);
  }
}
