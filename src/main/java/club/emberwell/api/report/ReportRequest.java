package club.emberwell.api.report;

import club.emberwell.quantity.WrittenQuantity;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.Remark;
import club.emberwell.report.Particulars;
import club.emberwell.report.WrittenLaser;
import club.emberwell.report.WrittenReport;
import club.emberwell.report.WrittenSettings;
import club.emberwell.report.WrittenTrial;
import club.emberwell.report.WrittenWork;
import java.util.List;
import java.util.UUID;

/**
 * A report as sent: one trial with its fields on top, or {@code trials} for a grid.
 *
 * @param id made by the client, or left out
 * @param confirmed pointers of implausible values that are meant
 * @param reason of an edit, for readers of the history
 */
record ReportRequest(
    UUID id,
    UUID machine,
    WrittenLaser laser,
    String material,
    String coating,
    String colour,
    WrittenQuantity thickness,
    String process,
    WrittenSettings settings,
    String effect,
    Integer quality,
    List<String> defects,
    List<WrittenTrial> trials,
    String notes,
    String lot,
    String controllerVersion,
    List<String> confirmed,
    String reason) {
  WrittenReport written() {
    return new WrittenReport(
        machine,
        laser,
        new WrittenWork(process, material, coating, colour, thickness),
        allTrials(),
        new Particulars(notes, lot, controllerVersion),
        null,
        confirmed);
  }

  private List<WrittenTrial> allTrials() {
    WrittenTrial only = new WrittenTrial(null, null, settings, effect, quality, defects);
    if (trials == null) {
      return List.of(only);
    }
    if (settings != null || effect != null || quality != null || defects != null) {
      throw new EntryRefused(
          Remark.error(
              "trials-and-settings",
              "/trials",
              "Send either settings with their effect or a list of trials."));
    }
    return trials;
  }
}
