package club.emberwell.desk;

import club.emberwell.member.Actor;
import java.util.UUID;

/** Where the items of some kinds live, and how they are moved in and out of sight. */
interface Shelf {
  boolean holds(ItemKind kind);

  /** Moves an item; the checks of its own package apply. */
  void move(Actor actor, UUID id, Action action, String why);

  /** The version it has now; 0 for what has none. */
  int version(Actor actor, UUID id);

  /** Makes an earlier version the newest again. */
  void rewrite(Actor actor, UUID id, int version, String why);
}
