package club.emberwell.api.talk;

import club.emberwell.api.view.FieldChangeJson;
import club.emberwell.api.view.MemberJson;
import club.emberwell.entry.Difference;
import club.emberwell.entry.EntryAction;
import club.emberwell.entry.EntryState;
import club.emberwell.entry.Revision;
import club.emberwell.talk.TalkDifference;
import club.emberwell.talk.WrittenTalk;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One version of an entry.
 *
 * @param by left out where a rule or the server itself did it
 * @param changes of title and ties since the version before
 * @param lines of the text, each kept, gone or new; empty where it is the same
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
record TalkRevisionJson(
    int version,
    EntryAction action,
    @Nullable MemberJson by,
    Instant at,
    @Nullable String reason,
    EntryState state,
    List<FieldChangeJson> changes,
    List<Line> lines) {

  /** A line of either text. */
  record Line(Difference.Change change, String text) {
    static Line of(Difference.Line line) {
      return new Line(line.change(), line.text());
    }
  }

  /**
   * @param revisions newest first
   */
  static List<TalkRevisionJson> all(List<Revision<WrittenTalk>> revisions) {
    return Revision.steps(revisions, TalkDifference::between).stream()
        .map(TalkRevisionJson::of)
        .toList();
  }

  private static TalkRevisionJson of(Revision.Step<WrittenTalk> step) {
    Revision<WrittenTalk> now = step.revision();
    return new TalkRevisionJson(
        now.version(),
        now.action(),
        MemberJson.of(now.editorId(), now.editor()),
        now.at(),
        now.reason(),
        now.state(),
        FieldChangeJson.all(step.changes().fields()),
        step.changes().lines().stream().map(Line::of).toList());
  }
}
