package club.emberwell.exchange.open;

import club.emberwell.laser.Laser;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.report.StoredReport;
import club.emberwell.report.reading.TrialSnapshot;
import club.emberwell.report.reading.WrittenSettings;

/**
 * One trial with all that its columns are made of.
 *
 * @param place among the trials of its report, from 0
 */
record TrialRow(StoredReport report, int place, Ordinals ordinals) {
  ReportSnapshot snapshot() {
    return report.snapshot();
  }

  Laser laser() {
    return snapshot().laser();
  }

  TrialSnapshot trial() {
    return snapshot().trials().get(place);
  }

  /** As typed. */
  WrittenSettings written() {
    WrittenSettings typed = report.written().trials().get(place).settings();
    return typed == null ? WrittenSettings.NONE : typed;
  }
}
