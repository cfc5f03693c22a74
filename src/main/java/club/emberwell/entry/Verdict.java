package club.emberwell.entry;

import java.time.Instant;

/**
 * What was decided about an entry.
 *
 * @param moderator null where a rule decided
 * @param rule its code, or null
 */
public record Verdict(
    Entry entry, Decision action, Entry.Author moderator, String rule, String reason, Instant at) {
  /** Name of the moderator, or of the rule. */
  public String by() {
    return moderator == null ? "rule " + rule : moderator.handle();
  }

  /** Where the entry is read. */
  public String path() {
    return entry.path();
  }

  /** In the past tense, for the author. */
  public String said() {
    return action.said();
  }

  /** The entry's words, shortened. */
  public String item() {
    return entry.title();
  }
}
