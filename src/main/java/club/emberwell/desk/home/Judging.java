package club.emberwell.desk.home;

import club.emberwell.desk.DeskAccess;
import club.emberwell.desk.flag.Flags;
import club.emberwell.desk.rule.Rules;
import club.emberwell.entry.Decision;
import club.emberwell.entry.EntryLife;
import club.emberwell.entry.EntryRef;
import club.emberwell.member.Actor;
import club.emberwell.remark.EntryForbidden;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;

/** One decision about an entry: it answers the flags on it and lays aside what rules noticed. */
@ApplicationScoped
public class Judging {
  private final EntryLife life;
  private final Flags flags;
  private final Rules rules;

  Judging(EntryLife life, Flags flags, Rules rules) {
    this.life = life;
    this.flags = flags;
    this.rules = rules;
  }

  /**
   * Decides.
   *
   * @param decision null = it stays as it is, where there is a flag or a note to answer
   * @param upheld whether the flags were right
   * @param reason for its author and for whoever flagged it
   * @throws EntryForbidden on one's own entry, and where there is nothing left to answer
   */
  @Transactional
  public void decide(Actor actor, EntryRef ref, Decision decision, boolean upheld, String reason) {
    DeskAccess.moderates(actor);
    boolean flagged = !flags.on(actor, ref).isEmpty();
    if (flagged) {
      flags.settle(actor, ref, upheld, decision, reason);
    } else if (decision != null) {
      life.decide(actor, ref, decision, reason);
    }
    int noted = rules.seenOn(actor, ref);
    if (!flagged && decision == null && noted == 0) {
      throw new EntryForbidden(
          EntryForbidden.Why.STATE, "Somebody else has answered this meanwhile.");
    }
  }
}
