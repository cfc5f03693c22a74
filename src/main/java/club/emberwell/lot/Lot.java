package club.emberwell.lot;

import club.emberwell.entry.Entry;
import java.util.UUID;

/** A delivery as it stands, detached. */
public record Lot(Entry entry, WrittenLot written) {
  public UUID id() {
    return entry.id();
  }

  public int version() {
    return entry.version();
  }

  /** What lists call it. */
  public String title() {
    return entry.title();
  }
}
