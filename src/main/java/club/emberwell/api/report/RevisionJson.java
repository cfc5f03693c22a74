package club.emberwell.api.report;

import club.emberwell.api.view.FieldChangeJson;
import club.emberwell.api.view.MemberJson;
import club.emberwell.entry.EntryAction;
import club.emberwell.entry.EntryState;
import club.emberwell.entry.FieldChange;
import club.emberwell.entry.Revision;
import club.emberwell.report.reading.WrittenDifference;
import club.emberwell.report.reading.WrittenReport;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.Instant;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/**
 * One version of a report.
 *
 * @param by left out where a rule or the server itself did it
 * @param changes what was typed differently than in the version before
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
@Schema(name = "ReportRevision")
record RevisionJson(
    int version,
    EntryAction action,
    @Nullable MemberJson by,
    Instant at,
    @Nullable String reason,
    EntryState state,
    List<FieldChangeJson> changes) {

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
        now.action(),
        MemberJson.of(now.editorId(), now.editor()),
        now.at(),
        now.reason(),
        now.state(),
        FieldChangeJson.all(changes));
  }
}
