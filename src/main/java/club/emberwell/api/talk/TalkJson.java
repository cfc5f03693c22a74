package club.emberwell.api.talk;

import club.emberwell.api.view.MemberJson;
import club.emberwell.api.view.PhotoJson;
import club.emberwell.api.view.Times;
import club.emberwell.entry.EntryKind;
import club.emberwell.entry.EntryState;
import club.emberwell.report.photo.Photo;
import club.emberwell.talk.TalkEntry;
import club.emberwell.talk.Ties;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.time.Instant;
import java.util.List;
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
    @JsonUnwrapped Tied tied,
    @Nullable UUID accepted,
    @JsonUnwrapped @Nullable Activity activity,
    @JsonUnwrapped Times times) {

  /** Which entry, in which state, and whose. */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record Head(UUID id, EntryKind kind, int version, EntryState state, MemberJson member) {}

  /**
   * What it says and shows.
   *
   * @param text Markdown, of a comment plain text, as written
   * @param html what may be shown of it
   * @param photos of a question or an answer, the first one first
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record Words(
      @Nullable String title, String text, String html, @Nullable List<PhotoJson> photos) {}

  /**
   * What it is about.
   *
   * @param cautionCodes ids of the cautions of what it is tied to, from special care on; left out
   *     of what is tied to nothing
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record Tied(@Nullable Ties ties, @Nullable List<String> cautionCodes) {}

  /** Of a question: what came of it. */
  record Activity(int answerCount, Instant activeAt) {}

  /** Of a kind that has no photos. */
  static TalkJson of(TalkEntry entry) {
    return of(entry, null, null);
  }

  /** With its photos. */
  static TalkJson of(
      TalkEntry entry, @Nullable List<Photo> photos, @Nullable List<String> cautionCodes) {
    boolean asks = entry.kind() == EntryKind.QUESTION;
    UUID above = entry.entry().parent();
    return new TalkJson(
        new Head(
            entry.id(),
            entry.kind(),
            entry.version(),
            entry.state(),
            MemberJson.of(entry.memberId(), entry.memberHandle())),
        new Words(
            entry.written().title(),
            entry.written().text(),
            entry.html().getMarkup(),
            photos == null ? null : PhotoJson.all(photos)),
        entry.kind() == EntryKind.ANSWER ? above : null,
        entry.kind() == EntryKind.COMMENT ? above : null,
        new Tied(
            EntryKind.REPLIES.contains(entry.kind()) ? null : entry.written().ties(), cautionCodes),
        entry.accepted(),
        asks ? new Activity(entry.answers(), entry.activeAt()) : null,
        new Times(entry.createdAt(), entry.updatedAt()));
  }
}
