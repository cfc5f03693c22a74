package club.emberwell.desk.undo;

import club.emberwell.desk.rule.RuleCode;
import java.time.Instant;
import java.util.UUID;

/**
 * An undo that was confirmed.
 *
 * @param member whose deeds, or null
 * @param rule whose deeds, or null
 * @param state running, done, restoring or restored
 * @param skipped steps that could not be taken, e.g. because an author withdrew an entry meanwhile
 */
public record UndoRun(
    UUID id,
    UUID member,
    String handle,
    RuleCode rule,
    Instant since,
    String reason,
    String state,
    UUID startedBy,
    String by,
    Instant startedAt,
    UUID restoredBy,
    long total,
    long done,
    long restored,
    long skipped) {

  public boolean over() {
    return state.equals("done") || state.equals("restored");
  }

  public boolean restorable() {
    return state.equals("done");
  }

  /** Whose deeds, in words. */
  public String about() {
    return rule == null ? handle : "the rule " + rule.label();
  }
}
