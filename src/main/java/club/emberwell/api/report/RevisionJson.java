package club.emberwell.api.report;

import club.emberwell.entry.FieldChange;
import club.emberwell.entry.Revision;
import club.emberwell.report.reading.WrittenDifference;
import club.emberwell.report.reading.WrittenReport;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.Instant;
import java.util.List;

/**
 * One version of a report.
 *
 * @param editor handle; null = the server itself
 * @param changes what was typed differently than in the version before
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
record RevisionJson(
    int version,
    String action,
    String editor,
    Instant at,
    String reason,
    String state,
    List<FieldChange> changes) {

  /**
   * @param revisions newest first
   */
  static List<RevisionJson> all(List<Revision<WrittenReport>> revisions) {
    return Revision.steps(revisions, WrittenDifference::between).stream()
        .map(step -> of(step.revision(), step.changes().fields()))
        .toList();
  }

  private static RevisionJson of(Revision<?> now, List<FieldChange> changes) {
    return new RevisionJson(
        now.version(),
        now.action().code(),
        now.editor(),
        now.at(),
        now.reason(),
        now.state().code(),
        changes);
  }
}
