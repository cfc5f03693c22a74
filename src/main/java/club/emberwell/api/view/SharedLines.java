package club.emberwell.api.view;

import club.emberwell.exchange.open.ReportLines;
import club.emberwell.report.StoredReport;
import jakarta.enterprise.context.ApplicationScoped;

/** Reports that leave the club look as the API answers them. */
@ApplicationScoped
class SharedLines implements ReportLines {
  private final ReportViews views;

  SharedLines(ReportViews views) {
    this.views = views;
  }

  @Override
  public Object json(StoredReport report) {
    return views.shared(report);
  }
}
