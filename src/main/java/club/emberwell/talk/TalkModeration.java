package club.emberwell.talk;

import club.emberwell.member.Actor;
import club.emberwell.member.Audit;
import club.emberwell.remark.EntryForbidden;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.talk.TalkRevisionEntity.Cause;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.Map;
import java.util.UUID;

/** What moderators decide about talk: always with a reason, never about their own. */
@ApplicationScoped
public class TalkModeration {
  private final TalkEntryRepository entries;
  private final TalkWriter writer;
  private final Audit audit;

  TalkModeration(TalkEntryRepository entries, TalkWriter writer, Audit audit) {
    this.entries = entries;
    this.writer = writer;
    this.audit = audit;
  }

  /** What can be decided. */
  public enum Decision {
    /** Out of sight until it is settled. */
    HOLD(TalkState.HELD, TalkAction.HELD),
    REMOVE(TalkState.REMOVED, TalkAction.REMOVED),
    /** Back, or for the first time, into sight. */
    RESTORE(TalkState.LIVE, TalkAction.RESTORED);

    private final TalkState state;
    private final TalkAction action;

    Decision(TalkState state, TalkAction action) {
      this.state = state;
      this.action = action;
    }
  }

  /**
   * Moves an entry to another state. Deciding what is so already does nothing.
   *
   * @param reason for the author; never blank
   * @throws EntryForbidden for whoever is no moderator, for one's own entry, and for one that its
   *     author withdrew
   */
  @Transactional
  public TalkEntry decide(Actor actor, UUID id, Decision decision, String reason) {
    if (!actor.moderates()) {
      throw new EntryForbidden("Only moderators decide this.");
    }
    TalkEntryEntity entry = entries.locked(id).orElseThrow(() -> new EntryUnknown("entry"));
    if (actor.is(entry.memberId())) {
      throw new EntryForbidden("Nobody decides about their own entry.");
    }
    if (entry.state() == TalkState.WITHDRAWN) {
      throw new EntryForbidden("Its author has withdrawn this.");
    }
    String why = TalkChecks.neededReason(reason);
    if (entry.state() != decision.state) {
      Cause cause = new Cause(actor.memberId(), Instant.now(), why);
      writer.enter(entry, decision.state, decision.action, cause);
      audit.record(
          actor, decision.action.code(), entry.kind().code(), id.toString(), why, Map.of());
    }
    return entries.named(id).orElseThrow();
  }
}
