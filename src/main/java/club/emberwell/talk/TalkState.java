package club.emberwell.talk;

/** Where an entry stands. Only LIVE ones are listed and searched. */
public enum TalkState {
  LIVE,
  /** Waits for a moderator's first look; its author sees it meanwhile. */
  WAITING,
  HELD,
  REMOVED,
  WITHDRAWN
}
