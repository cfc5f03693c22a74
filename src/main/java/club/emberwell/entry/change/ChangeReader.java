package club.emberwell.entry.change;

import club.emberwell.entry.change.ChangeLog.Change;
import club.emberwell.entry.change.ChangeLog.Mark;
import club.emberwell.entry.change.ChangeLog.Position;
import java.util.List;
import java.util.Optional;

/** Who follows the change rows, and keeps the place it has reached. */
public interface ChangeReader {
  String name();

  /** Rows taken at once. */
  int most();

  /**
   * Where it goes on in the history that the database has now; empty where there is no place to go
   * on from just now.
   */
  Optional<Position> place();

  /** Does what follows from changes; the same change may come again. */
  void take(List<Change> changes);

  /** All up to here was taken. */
  void reached(Mark place);

  /**
   * Takes the next changes.
   *
   * @return true where there are more
   */
  default boolean next(ChangeLog log) {
    Optional<Position> from = place();
    if (from.isEmpty()) {
      return false;
    }
    List<Change> some = log.since(from.get(), most());
    if (some.isEmpty()) {
      return false;
    }
    take(some);
    reached(some.get(some.size() - 1).mark());
    return some.size() == most();
  }
}
