package club.emberwell.report;

import club.emberwell.entry.EntryAccess;
import club.emberwell.listing.Slice;
import club.emberwell.member.Actor;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/** What a member posted, whatever became of it. */
@ApplicationScoped
public class OwnReports {
  private final ReportRepository reports;
  private final ReportSource source;

  OwnReports(ReportRepository reports, ReportSource source) {
    this.reports = reports;
    this.source = source;
  }

  /**
   * The actor's reports in every state, newest first. Costs the same number of statements however
   * many there are.
   */
  @Transactional
  public Slice<ReportSnapshot> of(Actor actor, int page) {
    UUID author = EntryAccess.signedIn(actor);
    return Slice.read(
            page, ReportLimits.OWN_PAGE, (from, most) -> reports.postedBy(author, from, most))
        .all(this::load);
  }

  private List<ReportSnapshot> load(List<UUID> ids) {
    Map<UUID, ReportSnapshot> found = new HashMap<>();
    source.byIds(ids).forEach(report -> found.put(report.id(), report));
    return ids.stream().map(found::get).toList();
  }
}
