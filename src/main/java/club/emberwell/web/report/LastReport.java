package club.emberwell.web.report;

import club.emberwell.member.Actor;
import club.emberwell.report.ReportService;
import club.emberwell.report.StoredReport;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.Optional;

/** What somebody posted last: the best guess for what they post next. */
@ApplicationScoped
class LastReport {
  private final ReportService reports;

  LastReport(ReportService reports) {
    this.reports = reports;
  }

  /** The newest with one test: a grid is no pattern for a single result. */
  Optional<StoredReport> of(Actor actor) {
    return reports.latest(actor, 1).stream().findFirst();
  }
}
