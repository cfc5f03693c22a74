package club.emberwell.desk;

import club.emberwell.talk.TalkEntry;
import java.time.Duration;
import java.time.Instant;
import java.util.UUID;

/**
 * A report, question, answer, notice or photo as the desk sees it.
 *
 * @param title its words, shortened
 * @param state LIVE, WAITING, HELD, REMOVED or WITHDRAWN
 * @param parent the question of an answer, the report of a photo, else null
 */
public record Item(
    ItemRef ref,
    UUID author,
    String authorHandle,
    String title,
    String state,
    Instant createdAt,
    UUID parent) {

  /** Where people read it: a path of this server. */
  public String path() {
    return switch (ref.kind()) {
      case REPORT -> "/reports/" + ref.id();
      case QUESTION -> "/ask/" + ref.id();
      case NOTICE -> "/notices/" + ref.id();
      case ANSWER -> TalkEntry.answerPath(parent, ref.id());
      case PHOTO -> "/reports/" + parent + "#photos";
    };
  }

  /** Its address on the desk. */
  public String deskPath() {
    return "/desk/items/" + ref.kind().code() + "/" + ref.id();
  }

  public Duration age(Instant now) {
    return Duration.between(createdAt, now);
  }

  public boolean live() {
    return "LIVE".equals(state);
  }
}
