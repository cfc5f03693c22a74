package club.emberwell.report;

import club.emberwell.entry.Origin;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.remark.Remark;
import club.emberwell.report.photo.Photo;
import club.emberwell.report.reading.WrittenReport;
import java.util.List;

/**
 * A report with everything its page or its JSON shows.
 *
 * @param remarks warnings and notes, by field
 * @param created false where the same entry was there already
 */
public record StoredReport(
    ReportSnapshot snapshot,
    WrittenReport written,
    NumberStyle style,
    Origin origin,
    List<Remark> remarks,
    List<Photo> photos,
    boolean created) {
  public StoredReport {
    remarks = List.copyOf(remarks);
    photos = List.copyOf(photos);
  }
}
