package club.emberwell.api.report;

import club.emberwell.bench.WrittenLaser;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.RemarkId;
import club.emberwell.report.reading.WrittenReport;
import club.emberwell.report.reading.WrittenSettings;
import club.emberwell.report.reading.WrittenTrial;
import club.emberwell.report.reading.WrittenWork;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.List;
import java.util.UUID;

/**
 * A report as sent.
 *
 * @param id made by the client, or left out
 * @param confirmed pointers of implausible values that are meant
 * @param reason of an edit, for readers of the history
 */
record ReportRequest(
    UUID id,
    UUID machine,
    WrittenLaser laser,
    @JsonUnwrapped WrittenWork work,
    @JsonUnwrapped Tried tried,
    List<String> confirmed,
    String reason) {

  /**
   * One trial with its fields on top, or {@code trials} for a grid. Generated clients send an empty
   * list for one that nobody filled.
   */
  record Tried(
      WrittenSettings settings,
      String effect,
      Integer quality,
      List<String> defects,
      List<WrittenTrial> trials) {
    private List<WrittenTrial> all() {
      boolean several = trials != null && !trials.isEmpty();
      boolean one =
          settings != null
              || effect != null
              || quality != null
              || defects != null && !defects.isEmpty();
      if (trials == null || one && !several) {
        return List.of(new WrittenTrial(null, null, settings, effect, quality, defects));
      }
      if (one) {
        throw new EntryRefused(
            RemarkId.TRIALS_AND_SETTINGS,
            "/trials",
            "Send either settings with their effect or a list of trials.");
      }
      return trials;
    }
  }

  WrittenReport written() {
    return new WrittenReport(machine, laser, work, tried.all(), null, confirmed);
  }
}
