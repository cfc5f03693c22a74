package club.emberwell.entry;

import java.time.Instant;

/**
 * What was decided about an entry.
 *
 * @param by name of the moderator, or of the rule
 */
public record Verdict(Entry entry, Decision action, String by, String reason, Instant at) {
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
