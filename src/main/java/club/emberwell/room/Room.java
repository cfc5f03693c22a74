package club.emberwell.room;

import club.emberwell.entry.Entry;
import java.util.UUID;

/**
 * A room as it stands, detached.
 *
 * @param values what its owner's words mean
 */
public record Room(Entry entry, WrittenRoom written, RoomValues values) {
  public UUID id() {
    return entry.id();
  }

  public int version() {
    return entry.version();
  }

  public String name() {
    return values.name();
  }
}
