package club.emberwell.report;

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
   * One page of somebody's own reports, newest first.
   *
   * @param number of the page, from 0
   * @param more whether older ones follow
   */
  public record Page(List<ReportSnapshot> reports, int number, boolean more) {}

  /**
   * The actor's reports in every state. Costs the same number of statements however many there are.
   *
   * @param page from 0; beyond {@link ReportLimits#OWN_PAGES} the last one allowed
   */
  @Transactional
  public Page of(Actor actor, int page) {
    UUID author = ReportAccess.signedIn(actor);
    int number = Math.max(0, Math.min(page, ReportLimits.OWN_PAGES - 1));
    int from = number * ReportLimits.OWN_PAGE;
    List<UUID> ids = reports.postedBy(author, from, ReportLimits.OWN_PAGE + 1);
    boolean more = ids.size() > ReportLimits.OWN_PAGE && number < ReportLimits.OWN_PAGES - 1;
    List<UUID> shown = ids.subList(0, Math.min(ids.size(), ReportLimits.OWN_PAGE));
    Map<UUID, ReportSnapshot> found = new HashMap<>();
    source.byIds(shown).forEach(report -> found.put(report.id(), report));
    return new Page(shown.stream().map(found::get).toList(), number, more);
  }
}
