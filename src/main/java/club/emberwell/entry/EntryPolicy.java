package club.emberwell.entry;

import club.emberwell.member.Actor;

/** Decides in which state a new entry begins. */
public interface EntryPolicy {
  /** Live, or waiting for a moderator's first look. */
  EntryState firstState(Actor author, EntryKind kind);
}
