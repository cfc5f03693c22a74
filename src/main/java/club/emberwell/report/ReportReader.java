package club.emberwell.report;

import club.emberwell.member.Actor;
import club.emberwell.remark.EntryUnknown;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.UUID;

/** Loads whole reports for whoever may see them, in the caller's transaction. */
@ApplicationScoped
class ReportReader {
  private final ReportRepository reports;
  private final StoredReports source;
  private final ReportRevisionRepository revisions;
  private final PhotoRepository photos;

  ReportReader(
      ReportRepository reports,
      StoredReports source,
      ReportRevisionRepository revisions,
      PhotoRepository photos) {
    this.reports = reports;
    this.source = source;
    this.revisions = revisions;
    this.photos = photos;
  }

  StoredReport whole(UUID id, boolean created) {
    reports.flush();
    ReportSnapshot snapshot =
        source.byIds(List.of(id)).stream()
            .findFirst()
            .orElseThrow(() -> new EntryUnknown("report"));
    ReportEntity report = reports.findById(id);
    return new StoredReport(
        snapshot,
        report.written(),
        report.numberStyle(),
        report.origin(),
        report.remarks(),
        photos.of(id),
        created);
  }

  ReportEntity seen(Actor actor, UUID id) {
    ReportEntity report =
        reports.findByIdOptional(id).orElseThrow(() -> new EntryUnknown("report"));
    ReportAccess.see(actor, report.memberId(), report.state(), report.updatedAt());
    return report;
  }

  StoredReport visible(Actor actor, UUID id) {
    seen(actor, id);
    return whole(id, false);
  }

  List<StoredReport> latest(UUID author, int most) {
    return reports.latestOf(author, most).stream().map(id -> whole(id, false)).toList();
  }

  List<Revision> history(Actor actor, UUID id) {
    seen(actor, id);
    return revisions.of(id);
  }

  List<UUID> repeats(Actor actor, UUID id) {
    seen(actor, id);
    return reports.repeatsOf(id, ReportLimits.REPEATS_SHOWN);
  }
}
