package club.emberwell.api.talk;

import club.emberwell.report.FieldChange;
import club.emberwell.talk.TalkDifference;
import club.emberwell.talk.TalkRevision;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * One version of an entry.
 *
 * @param changes of title and ties since the version before
 * @param lines of the text, each kept, gone or new; empty where it is the same
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
record TalkRevisionJson(
    int version,
    String action,
    String editor,
    Instant at,
    String reason,
    String state,
    List<FieldChange> changes,
    List<Line> lines) {

  /** A line of either text. */
  record Line(String change, String text) {}

  /**
   * @param revisions newest first
   */
  static List<TalkRevisionJson> all(List<TalkRevision> revisions) {
    List<TalkRevisionJson> all = new ArrayList<>();
    for (int i = 0; i < revisions.size(); i++) {
      TalkRevision before = i + 1 < revisions.size() ? revisions.get(i + 1) : revisions.get(i);
      all.add(of(revisions.get(i), before));
    }
    return List.copyOf(all);
  }

  private static TalkRevisionJson of(TalkRevision now, TalkRevision before) {
    TalkDifference difference = TalkDifference.between(before.written(), now.written());
    return new TalkRevisionJson(
        now.version(),
        now.action().code(),
        now.editorHandle(),
        now.at(),
        now.reason(),
        now.state().name().toLowerCase(Locale.ROOT),
        difference.fields(),
        difference.lines().stream()
            .map(line -> new Line(line.change().name().toLowerCase(Locale.ROOT), line.text()))
            .toList());
  }
}
