package club.emberwell.exchange.open;

import club.emberwell.catalog.CautionMark;
import club.emberwell.catalog.Cautions;
import club.emberwell.laser.Laser;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.report.StoredReport;
import club.emberwell.report.reading.ReportCautions;
import club.emberwell.report.reading.TrialSnapshot;
import club.emberwell.report.reading.WrittenSettings;

/**
 * One trial with all that its columns are made of.
 *
 * @param place among the trials of its report, from 0
 * @param cautions of now
 */
record TrialRow(StoredReport report, int place, Ordinals ordinals, Cautions cautions) {
  ReportSnapshot snapshot() {
    return report.snapshot();
  }

  Laser laser() {
    return snapshot().laser();
  }

  TrialSnapshot trial() {
    return snapshot().trials().get(place);
  }

  /** Ids of the cautions of its work from special care on; null where there are none. */
  String cautionCodes() {
    return CautionMark.of(ReportCautions.of(snapshot().work(), laser().source(), cautions))
        .map(CautionMark::coded)
        .orElse(null);
  }

  /** As typed. */
  WrittenSettings written() {
    WrittenSettings typed = report.written().trials().get(place).settings();
    return typed == null ? WrittenSettings.NONE : typed;
  }
}
