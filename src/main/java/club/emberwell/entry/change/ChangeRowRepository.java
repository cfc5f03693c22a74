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
  private record Row(long xid, long seq, String entity, UUID id) {
    Change toChange() {
      return new Change(new Position(xid, seq), entity, id);
    }
  }

  /** Where a reader stands; no epoch: it never read. */
  record Mark(UUID epoch, long xid, long seq) {
    Position position() {
      return new Position(xid, seq);
    }
  }

  UUID epoch() {
    return db.createNativeQuery("select epoch from history_epoch", UUID.class).getSingleResult();
  }

  List<Change> since(Position position, int most) {
    return db.createNativeQuery(
            """
            select cast(cast(xid as text) as bigint), seq, entity, entity_id
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

  long oldestRunning() {
    return db.createNativeQuery(
            "select cast(cast(pg_snapshot_xmin(pg_current_snapshot()) as text) as bigint)",
            Long.class)
        .getSingleResult();
  }

  Position trimmedTo() {
    return db.createNativeQuery(
            "select trimmed_xid, trimmed_seq from history_epoch", Position.class)
        .getSingleResult();
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

  void deleteTo(Position last) {
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
            where (xid, seq) <= (cast(cast(:xid as text) as xid8), cast(:seq as bigint))""")
        .setParameter("xid", last.xid())
        .setParameter("seq", last.seq())
        .executeUpdate();
  }

  void deleteAll(UUID newEpoch) {
    db.createNativeMutationQuery("delete from change_row").executeUpdate();
    db.createNativeMutationQuery(
            "update history_epoch set epoch = :epoch, trimmed_xid = 0, trimmed_seq = 0")
        .setParameter("epoch", newEpoch)
        .executeUpdate();
  }

  /** Held until the transaction ends; empty while another node is at it. */
  Optional<Mark> claim(String reader) {
    return db.createNativeQuery(
            """
            select epoch, xid, seq from change_reader
            where name = :name
            for update skip locked""",
            Mark.class)
        .setParameter("name", reader)
        .uniqueResultOptional();
  }

  void reached(String reader, UUID epoch, Position position) {
    db.createNativeMutationQuery(
            "update change_reader set epoch = :epoch, xid = :xid, seq = :seq where name = :name")
        .setParameter("epoch", epoch)
        .setParameter("xid", position.xid())
        .setParameter("seq", position.seq())
        .setParameter("name", reader)
        .executeUpdate();
  }
}
