package club.emberwell.entry;

import club.emberwell.member.Actor;
import java.util.Set;
import java.util.UUID;

/** What some kinds of entries do in their own way; everything else is {@link EntryLife}. */
public interface Kind {
  Set<EntryKind> kinds();

  /** What follows elsewhere when an entry came into sight or left it, e.g. a count of answers. */
  default void moved(EntryEntity entry, Cause cause) {}

  /**
   * Makes earlier words the newest ones again.
   *
   * @param version the entry has now
   * @param written the words as stored JSON
   */
  void rewrite(Actor actor, UUID id, int version, String written, String reason);
}
