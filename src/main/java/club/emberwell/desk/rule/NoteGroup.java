package club.emberwell.desk.rule;

import club.emberwell.entry.Entry;
import java.time.Instant;

/**
 * What one rule noticed of one member's entries and nobody has looked at yet.
 *
 * @param count how many entries
 * @param since when the first of them was noticed
 * @param latest id of the newest note
 */
public record NoteGroup(
    RuleCode rule, Entry.Author author, long count, Instant since, long latest) {

  /** Where it is decided about. */
  public String deskPath() {
    return "/desk/notes/" + rule.code() + "/" + author.id();
  }
}
