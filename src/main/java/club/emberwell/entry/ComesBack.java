package club.emberwell.entry;

import club.emberwell.member.Actor;
import club.emberwell.remark.EntryRefused;

/** A kind of entries that come back out of a file of their owner's. */
public interface ComesBack {
  /** The one that comes back. */
  EntryKind returning();

  /**
   * Stores one in the caller's transaction, by the same checks as one that is typed in. What it
   * names must be there.
   *
   * @throws EntryRefused with the pointers of the fields at fault; nothing was stored then
   */
  void comeBack(Actor actor, Returned from);
}
