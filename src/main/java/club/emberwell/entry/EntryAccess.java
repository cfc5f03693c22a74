package club.emberwell.entry;

import club.emberwell.member.Actor;
import club.emberwell.remark.EntryForbidden;
import club.emberwell.remark.EntryUnknown;
import java.util.UUID;

/** Who may see and change an entry. */
public final class EntryAccess {
  private EntryAccess() {}

  public static UUID signedIn(Actor actor) {
    if (!actor.signedIn()) {
      throw new EntryForbidden(EntryForbidden.Why.ROLE, "Sign in first.");
    }
    return actor.memberId();
  }

  /**
   * Lets through whoever may see an entry.
   *
   * @throws EntryUnknown where it must not be known
   * @throws Gone where it was public once
   */
  public static void see(Actor actor, EntryKind kind, UUID author, EntryState state) {
    if (actor.is(author)) {
      return;
    }
    if (kind.isPrivate()) {
      throw new EntryUnknown(kind.code());
    }
    if (state == EntryState.LIVE || actor.moderates()) {
      return;
    }
    if (state.gone()) {
      throw new Gone(kind, state);
    }
    throw new EntryUnknown(kind.code());
  }

  public static void see(Actor actor, EntryEntity entry) {
    see(actor, entry.kind(), entry.memberId(), entry.state());
  }

  /**
   * Lets through whoever may see an entry that still stands.
   *
   * @throws EntryUnknown where it must not be known, or was withdrawn
   */
  public static void standing(Actor actor, EntryEntity entry) {
    see(actor, entry);
    if (!entry.live()) {
      throw new EntryUnknown(entry.kind().code());
    }
  }

  /** Lets its author and moderators through while it stands. */
  public static void edit(Actor actor, EntryEntity entry) {
    signedIn(actor);
    see(actor, entry);
    if (!actor.is(entry.memberId()) && !actor.moderates()) {
      throw new EntryForbidden(
          EntryForbidden.Why.NOT_YOURS,
          "Only the author and moderators can edit " + entry.kind().said() + ".");
    }
    if (entry.state().gone()) {
      throw new EntryForbidden(EntryForbidden.Why.STATE, "This was removed and cannot be edited.");
    }
  }

  /** Lets its author through. */
  public static void own(Actor actor, EntryEntity entry) {
    signedIn(actor);
    see(actor, entry);
    if (!actor.is(entry.memberId())) {
      throw new EntryForbidden(EntryForbidden.Why.NOT_YOURS, "Only the author can do this.");
    }
  }

  /** Lets moderators through where the entry is somebody else's. */
  static void decide(Actor actor, EntryEntity entry) {
    if (!actor.moderates()) {
      throw new EntryForbidden(EntryForbidden.Why.ROLE, "Only moderators can do this.");
    }
    see(actor, entry);
    if (actor.is(entry.memberId())) {
      throw new EntryForbidden(
          EntryForbidden.Why.YOUR_OWN, "You cannot decide about your own entry.");
    }
  }
}
