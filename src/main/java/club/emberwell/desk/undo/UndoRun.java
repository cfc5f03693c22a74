package club.emberwell.desk.undo;

import club.emberwell.desk.rule.RuleCode;
import java.time.Instant;
import java.util.UUID;

/**
 * An undo that was confirmed.
 *
 * @param state running, done, restoring or restored
 * @param restoredBy who took it back, or null
 */
public record UndoRun(
    UUID id,
    Subject subject,
    String reason,
    String state,
    Start start,
    UUID restoredBy,
    Progress progress) {
  /**
   * What is undone.
   *
   * @param member whose deeds, or null
   * @param rule whose deeds, or null
   */
  public record Subject(UUID member, String handle, RuleCode rule, Instant since) {}

  /** Who began it, and when. */
  public record Start(UUID id, String by, Instant at) {}

  /**
   * How far it came.
   *
   * @param skipped steps that could not be taken, e.g. because an author withdrew an entry
   *     meanwhile
   */
  public record Progress(long total, long done, long restored, long skipped) {
    static final Progress NONE = new Progress(0, 0, 0, 0);
  }

  public UUID member() {
    return subject.member();
  }

  public RuleCode rule() {
    return subject.rule();
  }

  public Instant since() {
    return subject.since();
  }

  public UUID startedBy() {
    return start.id();
  }

  public String by() {
    return start.by();
  }

  public Instant startedAt() {
    return start.at();
  }

  public long total() {
    return progress.total();
  }

  public long done() {
    return progress.done();
  }

  public long restored() {
    return progress.restored();
  }

  public long skipped() {
    return progress.skipped();
  }

  public boolean over() {
    return state.equals("done") || state.equals("restored");
  }

  public boolean restorable() {
    return state.equals("done");
  }

  /** Whose deeds, in words. */
  public String about() {
    if (together()) {
      return "%s: %s".formatted(subject.handle(), rule().label());
    }
    return rule() == null ? subject.handle() : "the rule " + rule().label();
  }

  /** Whether it is a decision about what a rule noticed of a member's entries, not an undo. */
  public boolean together() {
    return member() != null && rule() != null;
  }
}
