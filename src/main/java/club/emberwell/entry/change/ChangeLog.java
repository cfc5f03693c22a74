package club.emberwell.entry.change;

import java.util.List;
import java.util.UUID;

/**
 * The change rows every node's index follows. Ids only: the reader loads the current entry, so
 * replays do no harm.
 */
public interface ChangeLog {

  /** A place in the log; ordered by transaction, then by row. */
  record Position(long xid, long seq) {
    public static final Position START = new Position(0, 0);
  }

  /** One change of one entry, e.g. entity {@code report}. */
  record Change(Position position, String entity, UUID id) {}

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
