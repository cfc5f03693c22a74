package club.emberwell.report;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/** Snapshots that were read before, each with the stamp of the rows it was made from. */
final class KeptSnapshots {
  private record Kept(String stamp, ReportSnapshot snapshot) {}

  private final Map<UUID, Kept> kept =
      new LinkedHashMap<>(64, 0.75f, true) {
        @Override
        protected boolean removeEldestEntry(Map.Entry<UUID, Kept> eldest) {
          return size() > ReportLimits.KEPT_SNAPSHOTS;
        }
      };

  /** Empty where its rows were written since. */
  synchronized Optional<ReportSnapshot> get(UUID id, String stamp) {
    Kept found = kept.get(id);
    return found != null && found.stamp().equals(stamp)
        ? Optional.of(found.snapshot())
        : Optional.empty();
  }

  synchronized void put(String stamp, ReportSnapshot snapshot) {
    kept.put(snapshot.id(), new Kept(stamp, snapshot));
  }
}
