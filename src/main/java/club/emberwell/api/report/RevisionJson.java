package club.emberwell.api.report;

import club.emberwell.report.FieldChange;
import club.emberwell.report.Revision;
import club.emberwell.report.WrittenDifference;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

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
  static List<RevisionJson> all(List<Revision> revisions) {
    List<RevisionJson> all = new ArrayList<>();
    for (int i = 0; i < revisions.size(); i++) {
      Revision before = i + 1 < revisions.size() ? revisions.get(i + 1) : null;
      all.add(of(revisions.get(i), before));
    }
    return List.copyOf(all);
  }

  private static RevisionJson of(Revision now, Revision before) {
    return new RevisionJson(
        now.version(),
        now.action().code(),
        now.editorHandle(),
        now.at(),
        now.reason(),
        now.state().name().toLowerCase(Locale.ROOT),
        before == null ? List.of() : WrittenDifference.between(before.written(), now.written()));
  }
}
