package club.emberwell.talk;

import club.emberwell.entry.Entry;
import club.emberwell.entry.EntryKind;
import club.emberwell.entry.EntryState;
import java.time.Instant;
import java.util.UUID;

/**
 * A question, an answer, a notice or a comment as it stands, detached.
 *
 * @param entry what it shares with every other entry
 * @param written title, text and ties
 * @param accepted of a question: the answer that helped, or null
 * @param answers of a question: how many live ones there are
 * @param activeAt when it was posted or last answered
 */
public record TalkEntry(
    Entry entry, WrittenTalk written, UUID accepted, int answers, Instant activeAt) {

  public UUID id() {
    return entry.id();
  }

  public EntryKind kind() {
    return entry.kind();
  }

  public int version() {
    return entry.version();
  }

  public EntryState state() {
    return entry.state();
  }

  public UUID memberId() {
    return entry.author().id();
  }

  public String memberHandle() {
    return entry.author().handle();
  }

  public Instant createdAt() {
    return entry.times().created();
  }

  public Instant updatedAt() {
    return entry.times().updated();
  }

  public boolean isLive() {
    return entry.live();
  }

  /** The text as it may stand on a page: Markdown, of a comment what was typed. */
  public SafeHtml html() {
    return kind() == EntryKind.COMMENT
        ? Markdown.asTyped(written.text())
        : Markdown.render(written.text());
  }

  /** Where a person reads it: a path of this server. */
  public String path() {
    return entry.path();
  }
}
