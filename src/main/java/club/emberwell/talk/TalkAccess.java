package club.emberwell.talk;

import club.emberwell.member.Actor;
import club.emberwell.remark.EntryForbidden;
import club.emberwell.remark.EntryUnknown;
import java.util.UUID;

/** Who may see and change an entry. */
final class TalkAccess {
  private TalkAccess() {}

  static boolean sees(Actor actor, UUID author, TalkState state) {
    return state == TalkState.LIVE || actor.is(author) || actor.moderates();
  }

  /**
   * Lets through whoever may see an entry.
   *
   * @throws EntryUnknown where it must not be known
   * @throws TalkGone where it was public once
   */
  static void see(Actor actor, UUID author, TalkKind kind, TalkState state) {
    if (sees(actor, author, state)) {
      return;
    }
    if (state == TalkState.WITHDRAWN || state == TalkState.REMOVED) {
      throw new TalkGone(state);
    }
    throw new EntryUnknown(kind.code());
  }

  static UUID signedIn(Actor actor) {
    if (!actor.signedIn()) {
      throw new EntryForbidden("Sign in first.");
    }
    return actor.memberId();
  }

  static void edit(Actor actor, TalkEntryEntity entry) {
    signedIn(actor);
    see(actor, entry.memberId(), entry.kind(), entry.state());
    if (!actor.is(entry.memberId()) && !actor.moderates()) {
      throw new EntryForbidden("Only its author and moderators may change this.");
    }
    if (entry.state() == TalkState.WITHDRAWN || entry.state() == TalkState.REMOVED) {
      throw new EntryForbidden("This is gone and not changed any more.");
    }
  }

  static void own(Actor actor, TalkEntryEntity entry) {
    signedIn(actor);
    see(actor, entry.memberId(), entry.kind(), entry.state());
    if (!actor.is(entry.memberId())) {
      throw new EntryForbidden("Only its author may do this.");
    }
  }
}
