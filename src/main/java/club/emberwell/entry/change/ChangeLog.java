package club.emberwell.entry.change;

import club.emberwell.entry.EntryKind;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;

/**
 * The change rows every node's index follows. Ids only: the reader loads the current entry, so
 * replays do no harm.
 */
public interface ChangeLog {

  /** A place in the log; ordered by transaction, then by row. */
  record Position(long xid, long seq) {
    public static final Position START = new Position(0, 0);

    public boolean isBefore(Position other) {
      return xid < other.xid || xid == other.xid && seq < other.seq;
    }
  }

  /** One change of one entry, e.g. entity {@code report}. */
  record Change(Position position, String entity, UUID id) {
    /** Ids of these kinds among changes, each once, in order. */
    public static Set<UUID> ids(List<Change> changes, Set<EntryKind> kinds) {
      Set<String> codes = kinds.stream().map(EntryKind::code).collect(Collectors.toSet());
      return changes.stream()
          .filter(change -> codes.contains(change.entity()))
          .map(Change::id)
          .collect(Collectors.toCollection(LinkedHashSet::new));
    }
  }

  /** The random id of this database's history; another one means: rebuild the index. */
  UUID epoch();

  /**
   * Changes behind a position whose transactions are all over, oldest first, at most {@code most}.
   */
  List<Change> since(Position position, int most);

  /** The newest position from which nothing is missed when all entries are read after asking. */
  Position head();

  /** The oldest position still kept; an index behind it must be rebuilt. */
  Position trimmedTo();
}
