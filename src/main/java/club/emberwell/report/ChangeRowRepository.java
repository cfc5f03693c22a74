package club.emberwell.report;

import club.emberwell.report.ChangeLog.Change;
import club.emberwell.report.ChangeLog.Position;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.Tuple;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.hibernate.Session;

/** Change rows and the epoch they belong to, in the caller's transaction. */
@ApplicationScoped
class ChangeRowRepository {
  private static final String FINISHED = "xid < pg_snapshot_xmin(pg_current_snapshot())";
  private static final String AT = "(cast(cast(:xid as text) as xid8), cast(:seq as bigint))";

  private final Session db;

  ChangeRowRepository(Session db) {
    this.db = db;
  }

  void add(String entity, UUID id) {
    db.createNativeMutationQuery("insert into change_row (entity, entity_id) values (:entity, :id)")
        .setParameter("entity", entity)
        .setParameter("id", id)
        .executeUpdate();
  }

  UUID epoch() {
    return db.createNativeQuery("select epoch from history_epoch", UUID.class).getSingleResult();
  }

  List<Change> since(Position position, int most) {
    return db.createNativeQuery(
            "select cast(cast(xid as text) as bigint), seq, entity, entity_id from change_row"
                + " where (xid, seq) > "
                + AT
                + " and "
                + FINISHED
                + " order by xid, seq limit :most",
            Tuple.class)
        .setParameter("xid", position.xid())
        .setParameter("seq", position.seq())
        .setParameter("most", most)
        .getResultStream()
        .map(row -> new Change(position(row), row.get(2, String.class), row.get(3, UUID.class)))
        .toList();
  }

  long oldestRunning() {
    return db.createNativeQuery(
            "select cast(cast(pg_snapshot_xmin(pg_current_snapshot()) as text) as bigint)",
            Long.class)
        .getSingleResult();
  }

  Position trimmedTo() {
    return position(
        db.createNativeQuery("select trimmed_xid, trimmed_seq from history_epoch", Tuple.class)
            .getSingleResult());
  }

  /** The newest finished row written before then. */
  Optional<Position> newestBefore(Instant before) {
    return db.createNativeQuery(
            "select cast(cast(xid as text) as bigint), seq from change_row where at < :before and "
                + FINISHED
                + " order by xid desc, seq desc limit 1",
            Tuple.class)
        .setParameter("before", before)
        .getResultStream()
        .map(ChangeRowRepository::position)
        .findFirst();
  }

  void deleteTo(Position last) {
    db.createNativeMutationQuery(
            "update history_epoch set trimmed_xid = :xid, trimmed_seq = :seq"
                + " where (trimmed_xid, trimmed_seq) < (:xid, :seq)")
        .setParameter("xid", last.xid())
        .setParameter("seq", last.seq())
        .executeUpdate();
    db.createNativeMutationQuery("delete from change_row where (xid, seq) <= " + AT)
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

  private static Position position(Tuple row) {
    return new Position(row.get(0, Number.class).longValue(), row.get(1, Number.class).longValue());
  }
}
