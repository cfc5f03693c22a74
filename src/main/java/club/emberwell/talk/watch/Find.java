package club.emberwell.talk.watch;

import club.emberwell.entry.Entry;
import club.emberwell.entry.EntryKind;
import club.emberwell.entry.EntryRef;
import java.time.Instant;
import java.util.UUID;

/**
 * Something new that a watch found, as it reads now.
 *
 * @param parent the question of an answer, the report of a comment, else null
 * @param title what to call it on a line of its own
 * @param author whose it is
 * @param kept the watch; null for an answer to one's own question
 */
public record Find(
    long id,
    EntryRef ref,
    UUID parent,
    String title,
    Entry.Author author,
    Kept kept,
    Instant foundAt,
    boolean read) {

  /** The watch that found it, and what it is called. */
  public record Kept(UUID id, String label) {}

  /** Name of its author. */
  public String by() {
    return author.handle();
  }

  /** What the watch is called; null for an answer to one's own question. */
  public String watch() {
    return kept == null ? null : kept.label();
  }

  /** {@code report}, {@code question}, {@code notice}, {@code answer} or {@code comment}. */
  public String entity() {
    return ref.kind().code();
  }

  public UUID entryId() {
    return ref.id();
  }

  /** Where a person reads it: a path of this server. */
  public String path() {
    return ref.kind().path(ref.id(), parent);
  }

  /** Why it came without a watch, behind the name of its author. */
  public String why() {
    return ref.kind() == EntryKind.COMMENT
        ? "on a result that you posted or commented on"
        : "to your question";
  }

  /** What it is, as a word on the page. */
  public String kind() {
    return ref.kind() == EntryKind.REPORT ? "Result" : ref.kind().label();
  }
}
