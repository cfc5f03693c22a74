package club.emberwell.entry.change;

import club.emberwell.entry.change.ChangeLog.Change;
import club.emberwell.entry.change.ChangeLog.Position;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Who follows the change rows, and keeps the place it has reached. */
public interface ChangeReader {
  String name();

  /** Rows taken at once. */
  int most();

  /** Where it goes on in this history; empty where there is no place to go on from just now. */
  Optional<Position> place(UUID history);

  /** Does what follows from changes; the same change may come again. */
  void take(List<Change> changes);

  /** All up to here was taken. */
  void reached(UUID history, Position place);

  /**
   * Takes the next changes.
   *
   * @return true where there are more
   */
  default boolean next(ChangeLog log) {
    UUID history = log.epoch();
    Optional<Position> from = place(history);
    if (from.isEmpty()) {
      return false;
    }
    List<Change> some = log.since(from.get(), most());
    if (some.isEmpty()) {
      return false;
    }
    take(some);
    reached(history, some.get(some.size() - 1).position());
    return some.size() == most();
  }
}
