package club.emberwell.entry.change;

import club.emberwell.entry.change.ChangeLog.Change;
import club.emberwell.entry.change.ChangeLog.Position;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.hibernate.Session;

/** Change rows, the epoch they belong to, and how far they were followed. */
@ApplicationScoped
class ChangeRowRepository {
  private final Session db;

  ChangeRowRepository(Session db) {
    this.db = db;
  }

  /** A change row; numbers of transactions travel as numbers. */
  private record Row(long xid, long seq, String entity, UUID id, Instant at) {
    Change toChange() {
      return new Change(new Position(xid, seq), entity, id, at);
    }
  }

  /** Where a reader stands; no epoch: it never read. */
  record Reached(UUID epoch, long xid, long seq) {
    Position position() {
      return new Position(xid, seq);
    }
  }

  List<Change> since(Position position, int most) {
    return db.createNativeQuery(
            """
            select cast(cast(xid as text) as bigint), seq, entity, entity_id, at
            from change_row
            where (xid, seq) > (cast(cast(:xid as text) as xid8), cast(:seq as bigint))
              and xid < pg_snapshot_xmin(pg_current_snapshot())
            order by xid, seq
            limit :most""",
            Row.class)
        .setParameter("xid", position.xid())
        .setParameter("seq", position.seq())
        .setParameter("most", most)
        .getResultStream()
        .map(Row::toChange)
        .toList();
  }

  /** The newest row of transactions that are all over. */
  Optional<Change> newest() {
    return db.createNativeQuery(
            """
            select cast(cast(xid as text) as bigint), seq, entity, entity_id, at
            from change_row
            where xid < pg_snapshot_xmin(pg_current_snapshot())
            order by xid desc, seq desc
            limit 1""",
            Row.class)
        .uniqueResultOptional()
        .map(Row::toChange);
  }

  /** The newest finished row written before then. */
  Optional<Position> newestBefore(Instant before) {
    return db.createNativeQuery(
            """
            select cast(cast(xid as text) as bigint), seq
            from change_row
            where at < :before and xid < pg_snapshot_xmin(pg_current_snapshot())
            order by xid desc, seq desc
            limit 1""",
            Position.class)
        .setParameter("before", before)
        .uniqueResultOptional();
  }

  void deleteBefore(Position last) {
    db.createNativeMutationQuery(
            """
            update history_epoch set trimmed_xid = :xid, trimmed_seq = :seq
            where (trimmed_xid, trimmed_seq) < (:xid, :seq)""")
        .setParameter("xid", last.xid())
        .setParameter("seq", last.seq())
        .executeUpdate();
    db.createNativeMutationQuery(
            """
            delete from change_row
            where (xid, seq) < (cast(cast(:xid as text) as xid8), cast(:seq as bigint))""")
        .setParameter("xid", last.xid())
        .setParameter("seq", last.seq())
        .executeUpdate();
  }

  /** Held until the transaction ends; empty while another node is at it. */
  Optional<Reached> claim(String reader) {
    return db.createNativeQuery(
            """
            select epoch, xid, seq from change_reader
            where name = :name
            for update skip locked""",
            Reached.class)
        .setParameter("name", reader)
        .uniqueResultOptional();
  }

  void reached(String reader, Position position) {
    db.createNativeMutationQuery(
            "update change_reader set xid = :xid, seq = :seq where name = :name")
        .setParameter("xid", position.xid())
        .setParameter("seq", position.seq())
        .setParameter("name", reader)
        .executeUpdate();
  }

  /** A reader begins in a history, from here on. */
  void enter(String reader, UUID epoch, Position position) {
    db.createNativeMutationQuery("update change_reader set epoch = :epoch where name = :name")
        .setParameter("epoch", epoch)
        .setParameter("name", reader)
        .executeUpdate();
    reached(reader, position);
  }
}
