package club.emberwell.entry;

import club.emberwell.remark.Coded;
import jakarta.persistence.EnumeratedValue;

/** Where an entry stands. Only live ones are listed, searched and counted. */
public enum EntryState implements Coded {
  LIVE("live"),
  /** Waits for a moderator's first look; its author sees it meanwhile. */
  WAITING("waiting"),
  HELD("held"),
  REMOVED("removed"),
  WITHDRAWN("withdrawn");

  @EnumeratedValue private final String code;

  EntryState(String code) {
    this.code = code;
  }

  /** The word in the API and in the database. */
  @Override
  public String code() {
    return code;
  }

  /** Was public once and is not changed any more. */
  public boolean gone() {
    return this == REMOVED || this == WITHDRAWN;
  }
}
