package club.emberwell.entry;

import jakarta.persistence.EnumeratedValue;
import java.util.Optional;
import java.util.stream.Stream;

/** Where an entry stands. Only live ones are listed, searched and counted. */
public enum EntryState {
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
  public String code() {
    return code;
  }

  public static Optional<EntryState> of(String code) {
    return Stream.of(values()).filter(state -> state.code.equals(code)).findFirst();
  }

  /** Was public once and is not changed any more. */
  public boolean gone() {
    return this == REMOVED || this == WITHDRAWN;
  }
}
