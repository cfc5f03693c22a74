package club.emberwell.exchange.open;

import club.emberwell.report.StoredReport;

/** How a report looks as a line of JSON: as the API answers it. */
public interface ReportLines {
  /** What Jackson writes as the report. */
  Object json(StoredReport report);
}
