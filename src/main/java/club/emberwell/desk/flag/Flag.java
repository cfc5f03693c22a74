package club.emberwell.desk.flag;

import club.emberwell.entry.Entry;
import club.emberwell.entry.EntryRef;
import java.time.Instant;
import java.util.UUID;

/**
 * Somebody's word that something is wrong with an entry.
 *
 * @param state open, withdrawn, upheld or dismissed
 * @param settled null while nobody answered it
 */
public record Flag(
    UUID id,
    Entry entry,
    Entry.Author raiser,
    FlagReason reason,
    String note,
    String state,
    Instant createdAt,
    Settled settled) {

  /** What a moderator said, and when. */
  public record Settled(Instant at, String outcome) {}

  public EntryRef ref() {
    return entry.ref();
  }

  public String by() {
    return raiser.handle();
  }

  public String outcome() {
    return settled == null ? null : settled.outcome();
  }

  public Instant decidedAt() {
    return settled == null ? null : settled.at();
  }

  public boolean upheld() {
    return "upheld".equals(state);
  }

  /** How it stands, in words. */
  public String said() {
    return switch (state) {
      case "open" -> "waits for an answer";
      case "upheld" -> "a moderator agreed";
      case "dismissed" -> "a moderator saw nothing wrong";
      default -> state;
    };
  }

  public boolean open() {
    return "open".equals(state);
  }

  /** The entry's words, shortened. */
  public String item() {
    return entry.title();
  }

  /** Where the entry is read. */
  public String path() {
    return entry.path();
  }
}
