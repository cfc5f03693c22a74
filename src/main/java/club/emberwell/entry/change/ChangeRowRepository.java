package club.emberwell.entry.change;

import club.emberwell.entry.EntryKind;
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

  /** A change row with when its transaction began. */
  record Newest(long xid, long seq, UUID id, Instant at) {
    Position position() {
      return new Position(xid, seq);
    }
  }

  /** Of each entry of a kind the newest change, of those whose transactions are all over. */
  List<Newest> newest(EntryKind kind, Position position, Instant since, int most) {
    return db.createNativeQuery(
            """
            select cast(cast(c.xid as text) as bigint), c.seq, c.entity_id, c.at
            from change_row c
            where c.entity = :kind
              and (c.xid, c.seq) > (cast(cast(:xid as text) as xid8), cast(:seq as bigint))
              and c.xid < pg_snapshot_xmin(pg_current_snapshot())
              and c.at >= :since
              and not exists (select 1 from change_row n
                where n.entity_id = c.entity_id and n.entity = c.entity
                  and (n.xid, n.seq) > (c.xid, c.seq)
                  and n.xid < pg_snapshot_xmin(pg_current_snapshot()))
            order by c.xid, c.seq
            limit :most""",
            Newest.class)
        .setParameter("kind", kind.code())
        .setParameter("xid", position.xid())
        .setParameter("seq", position.seq())
        .setParameter("since", since)
        .setParameter("most", most)
        .getResultList();
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

  /** Of each report the newest row stays for good: whoever keeps a copy asks for it, even late. */
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
            where (xid, seq) <= (cast(cast(:xid as text) as xid8), cast(:seq as bigint))
              and (entity <> 'report' or exists (select 1 from change_row n
                where n.entity_id = change_row.entity_id and n.entity = 'report'
                  and (n.xid, n.seq) > (change_row.xid, change_row.seq)))""")
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
    db.createNativeMutationQuery(
            """
            insert into change_row (entity, entity_id)
            select kind, id from entry where kind = 'report'""")
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
