package club.emberwell.desk.undo;

import club.emberwell.desk.DeskAccess;
import club.emberwell.desk.DeskLimits;
import club.emberwell.desk.rule.RuleCode;
import club.emberwell.entry.Decision;
import club.emberwell.member.Actor;
import club.emberwell.member.Audit;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.remark.RemarkId;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.Map;
import java.util.UUID;

/**
 * One decision about everything that a rule noticed of one member's entries, taken in steps like an
 * undo, so that it is undone in one as well.
 */
@ApplicationScoped
public class NoteDecisions {
  private final UndoRepository undos;
  private final UndoCandidateRepository candidates;
  private final UndoWork work;
  private final Undos runs;
  private final Audit audit;

  NoteDecisions(
      UndoRepository undos,
      UndoCandidateRepository candidates,
      UndoWork work,
      Undos runs,
      Audit audit) {
    this.undos = undos;
    this.candidates = candidates;
    this.work = work;
    this.runs = runs;
    this.audit = audit;
  }

  /** Which notes: those of a rule about a member's entries. */
  public record Group(RuleCode rule, UUID member) {}

  /**
   * Decides about all of them: a good deal at once, the rest in the background.
   *
   * @param run an id made by the client; the same one twice is one decision
   * @param decision null = the entries stay as they are
   * @param reason for their author
   * @throws EntryRefused for what cannot be decided together, and where the reason is missing
   * @throws EntryUnknown where no note is left
   */
  public UndoRun decide(Actor actor, UUID run, Group group, Decision decision, String reason) {
    QuarkusTransaction.requiringNew().run(() -> begin(actor, run, group, decision, reason));
    work.some(run, DeskLimits.UNDO_AT_ONCE);
    return runs.one(actor, run);
  }

  private void begin(Actor actor, UUID run, Group group, Decision decision, String reason) {
    DeskAccess.moderates(actor);
    DeskAccess.notOwn(actor, group.member());
    if (run == null) {
      throw new EntryRefused(RemarkId.REQUIRED, "/id", "Please fill in this field.");
    }
    boolean blank = reason == null || reason.isBlank();
    String why = decision == null && blank ? "Looked at." : DeskAccess.reason(reason);
    UUID by = DeskAccess.signedIn(actor);
    Instant now = Instant.now();
    UndoRun.Subject what = new UndoRun.Subject(group.member(), null, group.rule(), now);
    if (undos.begin(run, what, why, by, now)) {
      if (candidates.keepTogether(run, group.rule(), group.member(), step(decision)) == 0) {
        throw new EntryUnknown("open note");
      }
      Map<String, Object> detail =
          Map.of(
              "rule", group.rule().code(),
              "decision", decision == null ? "leave" : decision.code(),
              "run", run.toString());
      audit.record(actor, "decide-notes", "member", group.member().toString(), why, detail);
    } else if (!undos.run(run).orElseThrow().startedBy().equals(by)) {
      throw new EntryRefused(RemarkId.ID_TAKEN, "/id", "This id belongs to another undo.");
    }
  }

  private static UndoStep step(Decision decision) {
    if (decision == null) {
      return null;
    }
    return switch (decision) {
      case HOLD -> UndoStep.HOLD;
      case REMOVE -> UndoStep.REMOVE;
      case RESTORE -> UndoStep.RELEASE;
      case APPROVE ->
          throw new EntryRefused(
              RemarkId.CHOICE_UNKNOWN, "/action", "Choose one of: hold, remove, restore.");
    };
  }
}
