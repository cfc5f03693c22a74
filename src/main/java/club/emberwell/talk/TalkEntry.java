package club.emberwell.talk;

import java.time.Instant;
import java.util.UUID;

/**
 * A question, an answer or a notice as it stands, detached.
 *
 * @param question the question an answer belongs to, else null
 * @param written title, Markdown and ties
 * @param accepted of a question: the answer that helped, or null
 * @param answers of a question: how many live ones there are
 * @param activeAt when it was posted or last answered
 */
public record TalkEntry(
    UUID id,
    long number,
    TalkKind kind,
    int version,
    TalkState state,
    UUID memberId,
    String memberHandle,
    UUID question,
    WrittenTalk written,
    UUID accepted,
    int answers,
    Instant activeAt,
    Instant createdAt,
    Instant updatedAt) {

  public boolean isLive() {
    return state == TalkState.LIVE;
  }

  /** The text as it may stand on a page. */
  public SafeHtml html() {
    return Markdown.render(written.text());
  }

  /** Where an answer stands, on whichever page of its question that is. */
  public static String answerPath(UUID question, UUID answer) {
    return "/ask/" + question + "?answer=" + answer + "#answer-" + answer;
  }

  /** Where a person reads it: a path of this server. */
  public String path() {
    return switch (kind) {
      case QUESTION -> "/ask/" + id;
      case NOTICE -> "/notices/" + id;
      case ANSWER -> answerPath(question, id);
    };
  }
}
