package club.emberwell.talk;

import club.emberwell.member.Actor;

/** Decides in which state a new entry begins. */
public interface TalkPolicy {
  /** LIVE, or WAITING for a moderator's first look. */
  TalkState firstState(Actor author, TalkKind kind, WrittenTalk written);
}
