package club.emberwell.api.talk;

import club.emberwell.api.view.MemberJson;
import club.emberwell.api.view.Times;
import club.emberwell.entry.EntryKind;
import club.emberwell.entry.EntryState;
import club.emberwell.talk.TalkEntry;
import club.emberwell.talk.Ties;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * An entry as answered.
 *
 * @param question the question an answer belongs to
 * @param report the report a comment stands under
 * @param accepted of a question: the answer that helped
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
record TalkJson(
    @JsonUnwrapped Head head,
    @JsonUnwrapped Words words,
    @Nullable UUID question,
    @Nullable UUID report,
    @Nullable Ties ties,
    @Nullable UUID accepted,
    @JsonUnwrapped @Nullable Activity activity,
    @JsonUnwrapped Times times) {

  /** Which entry, in which state, and whose. */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record Head(UUID id, EntryKind kind, int version, EntryState state, MemberJson member) {}

  /**
   * What it says.
   *
   * @param text Markdown, of a comment plain text, as written
   * @param html what may be shown of it
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record Words(@Nullable String title, String text, String html) {}

  /** Of a question: what came of it. */
  record Activity(int answerCount, Instant activeAt) {}

  static TalkJson of(TalkEntry entry) {
    boolean asks = entry.kind() == EntryKind.QUESTION;
    UUID above = entry.entry().parent();
    return new TalkJson(
        new Head(
            entry.id(),
            entry.kind(),
            entry.version(),
            entry.state(),
            MemberJson.of(entry.memberId(), entry.memberHandle())),
        new Words(entry.written().title(), entry.written().text(), entry.html().getMarkup()),
        entry.kind() == EntryKind.ANSWER ? above : null,
        entry.kind() == EntryKind.COMMENT ? above : null,
        EntryKind.REPLIES.contains(entry.kind()) ? null : entry.written().ties(),
        entry.accepted(),
        asks ? new Activity(entry.answers(), entry.activeAt()) : null,
        new Times(entry.createdAt(), entry.updatedAt()));
  }
}
