package club.emberwell.report;

import club.emberwell.entry.EntryAccess;
import club.emberwell.entry.EntryEntity;
import club.emberwell.listing.ListOrder;
import club.emberwell.listing.Part;
import club.emberwell.listing.Place;
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
  private static final ListOrder OWN = ListOrder.newestFirst("reports", ReportLimits.OWN_PAGE);

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
  public Slice<ReportSnapshot> of(Actor actor, Part part) {
    UUID author = EntryAccess.signedIn(actor);
    return Slice.read(part, OWN, place -> reports.postedBy(author, place), EntryEntity::place)
        .map(EntryEntity::id)
        .all(this::load);
  }

  /** Whether there is one, in whatever state: one statement. */
  @Transactional
  public boolean any(Actor actor) {
    return !reports.postedBy(EntryAccess.signedIn(actor), Place.first(OWN, 1)).isEmpty();
  }

  private List<ReportSnapshot> load(List<UUID> ids) {
    Map<UUID, ReportSnapshot> found = new HashMap<>();
    source.byIds(ids).forEach(report -> found.put(report.id(), report));
    return ids.stream().map(found::get).toList();
  }
}
