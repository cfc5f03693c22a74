package club.emberwell.entry.change;

import club.emberwell.entry.EntryKind;
import java.time.Instant;
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

  /**
   * A row that was read. No other history has a change of the same entry at the same time under the
   * same number, so a database without it is not the one it was read from.
   *
   * @param id the entry; null: no row was read yet
   * @param at when its transaction began, to the microsecond
   */
  record Mark(Position position, UUID id, Instant at) {
    public static final Mark NONE = new Mark(Position.START, null, null);
  }

  /** One change of one entry, e.g. entity {@code report}. */
  record Change(Position position, String entity, UUID id, Instant at) {
    public Mark mark() {
      return new Mark(position, id, at);
    }

    /** Ids of these kinds among changes, each once, in order. */
    public static Set<UUID> ids(List<Change> changes, Set<EntryKind> kinds) {
      Set<String> codes = kinds.stream().map(EntryKind::code).collect(Collectors.toSet());
      return changes.stream()
          .filter(change -> codes.contains(change.entity()))
          .map(Change::id)
          .collect(Collectors.toCollection(LinkedHashSet::new));
    }
  }

  /**
   * What an index remembers of the database it was made from.
   *
   * @param history its random id
   * @param number rises with every history
   * @param last everything up to this row is in the index
   */
  record Known(UUID history, long number, Mark last) {
    /** Of no database at all. */
    public static final Known NOTHING = new Known(new UUID(0, 0), 0, Mark.NONE);

    public Known at(Mark newer) {
      return new Known(history, number, newer);
    }
  }

  /**
   * How an index stands to the database.
   *
   * @param follows whether the change rows lead on from where it is
   * @param answers whether it may answer until a new one is there: all it has seen is still true
   * @param why it cannot follow, in words
   */
  record Footing(boolean follows, boolean answers, String why) {
    public static final Footing FIRM = new Footing(true, true, "");

    public static Footing lost(boolean answers, String why) {
      return new Footing(false, answers, why);
    }
  }

  /**
   * The random id of this database's history. Positions of another one mean nothing here; a
   * database that was restored begins a new one before anybody reads in it.
   */
  UUID epoch();

  /**
   * Whether an index can go on from where it is. Where the database was put back behind what the
   * index has seen, a new history begins.
   */
  Footing footing(Known known);

  /**
   * Changes behind a position whose transactions are all over, oldest first, at most {@code most}.
   */
  List<Change> since(Position position, int most);

  /** The newest place from which nothing is missed when all entries are read after asking. */
  Known head();
}
