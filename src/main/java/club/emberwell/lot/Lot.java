package club.emberwell.lot;

import club.emberwell.entry.Entry;
import java.util.Optional;
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

  /** Of its pieces; empty where they were not looked at yet. */
  public Optional<CountedShare> usableShare() {
    return Optional.of(written.counts())
        .filter(WrittenLot.Counts::inspected)
        .map(counts -> CountedShare.of(counts.usable(), counts.received()));
  }
}
