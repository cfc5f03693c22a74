package club.emberwell.desk;

import club.emberwell.bench.FieldReader;
import club.emberwell.member.Actor;
import club.emberwell.member.MemberView;
import club.emberwell.member.Role;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.remark.EntryForbidden;
import club.emberwell.remark.Remarks;
import java.util.UUID;

/** Who may do what at the desk, and what may be written there. */
public final class DeskAccess {
  private DeskAccess() {}

  public static void moderates(Actor actor) {
    if (!actor.moderates()) {
      throw new EntryForbidden(EntryForbidden.Why.ROLE, "Only moderators can do this.");
    }
  }

  public static UUID signedIn(Actor actor) {
    if (!actor.signedIn()) {
      throw new EntryForbidden(EntryForbidden.Why.ROLE, "Sign in first.");
    }
    return actor.memberId();
  }

  public static void notOwn(Actor actor, UUID author) {
    if (actor.is(author)) {
      throw new EntryForbidden(
          EntryForbidden.Why.YOUR_OWN, "You cannot decide about your own entry.");
    }
  }

  /** Moderators deal with members, owners with everybody, nobody with themselves. */
  public static void above(Actor actor, MemberView other) {
    moderates(actor);
    if (actor.is(other.id())) {
      throw new EntryForbidden(EntryForbidden.Why.YOUR_OWN, "You cannot decide about yourself.");
    }
    if (other.role().atLeast(Role.MODERATOR) && !actor.role().atLeast(Role.OWNER)) {
      throw new EntryForbidden(
          EntryForbidden.Why.ROLE, "Only an owner can decide about moderators and owners.");
    }
  }

  /** A reason that must be there. */
  public static String reason(String given) {
    return text("/reason", given, DeskLimits.REASON, true);
  }

  /** A text at a field, null where none was given and none is needed. */
  public static String text(String pointer, String given, int most, boolean needed) {
    FieldReader in = new FieldReader(NumberStyle.ANY);
    if (needed) {
      in.required(pointer, given);
    }
    String text = in.text(pointer, given, most, true);
    Remarks.refuse(in.remarks());
    return text;
  }
}
