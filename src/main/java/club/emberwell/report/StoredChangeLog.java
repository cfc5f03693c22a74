package club.emberwell.report;

import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.Tuple;
import jakarta.transaction.Transactional;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.hibernate.Session;

/**
 * The change rows in the database. A reader stays below the oldest running transaction: rows become
 * visible in the order of commits, not of their numbers, so whoever polled by number alone would
 * step over a row whose transaction was still open.
 */
@ApplicationScoped
public class StoredChangeLog implements ChangeLog {
  /** Rows older than this are dropped; a node away for longer rebuilds its index. */
  static final Duration KEPT = Duration.ofDays(7);

  private static final String FINISHED = "xid < pg_snapshot_xmin(pg_current_snapshot())";

  private final Session db;

  StoredChangeLog(Session db) {
    this.db = db;
  }

  /** Notes a change in the caller's transaction: it is seen exactly if the change is. */
  @Transactional(Transactional.TxType.MANDATORY)
  public void add(String entity, UUID id) {
    db.createNativeMutationQuery("insert into change_row (entity, entity_id) values (:entity, :id)")
        .setParameter("entity", entity)
        .setParameter("id", id)
        .executeUpdate();
  }

  @Override
  @Transactional
  public UUID epoch() {
    return db.createNativeQuery("select epoch from history_epoch", UUID.class).getSingleResult();
  }

  @Override
  @Transactional
  public List<Change> since(Position position, int most) {
    List<Tuple> rows =
        db.createNativeQuery(
                "select cast(cast(xid as text) as bigint), seq, entity, entity_id from change_row"
                    + " where (xid, seq) > (cast(cast(:xid as text) as xid8), cast(:seq as bigint))"
                    + " and "
                    + FINISHED
                    + " order by xid, seq limit :most",
                Tuple.class)
            .setParameter("xid", position.xid())
            .setParameter("seq", position.seq())
            .setParameter("most", most)
            .getResultList();
    return rows.stream()
        .map(
            row ->
                new Change(
                    position(row.get(0), row.get(1)), (String) row.get(2), (UUID) row.get(3)))
        .toList();
  }

  @Override
  @Transactional
  public Position head() {
    long oldestRunning =
        db.createNativeQuery(
                "select cast(cast(pg_snapshot_xmin(pg_current_snapshot()) as text) as bigint)",
                Long.class)
            .getSingleResult();
    return new Position(oldestRunning - 1, Long.MAX_VALUE);
  }

  @Override
  @Transactional
  public Position trimmedTo() {
    Tuple row =
        db.createNativeQuery("select trimmed_xid, trimmed_seq from history_epoch", Tuple.class)
            .getSingleResult();
    return position(row.get(0), row.get(1));
  }

  @Scheduled(every = "1h", delayed = "10m")
  void trimOld() {
    trim(Instant.now().minus(KEPT));
  }

  /** Drops rows up to the newest one written before then, and remembers how far. */
  @Transactional
  public void trim(Instant before) {
    List<Tuple> newest =
        db.createNativeQuery(
                "select cast(cast(xid as text) as bigint), seq from change_row where at < :before"
                    + " and "
                    + FINISHED
                    + " order by xid desc, seq desc limit 1",
                Tuple.class)
            .setParameter("before", before)
            .getResultList();
    if (newest.isEmpty()) {
      return;
    }
    Position last = position(newest.get(0).get(0), newest.get(0).get(1));
    db.createNativeMutationQuery(
            "update history_epoch set trimmed_xid = :xid, trimmed_seq = :seq"
                + " where (trimmed_xid, trimmed_seq) < (:xid, :seq)")
        .setParameter("xid", last.xid())
        .setParameter("seq", last.seq())
        .executeUpdate();
    db.createNativeMutationQuery(
            "delete from change_row where (xid, seq)"
                + " <= (cast(cast(:xid as text) as xid8), cast(:seq as bigint))")
        .setParameter("xid", last.xid())
        .setParameter("seq", last.seq())
        .executeUpdate();
  }

  /**
   * After a restore: the rows' transaction numbers are those of another server, so they go, and the
   * new epoch makes every node rebuild.
   */
  @Transactional
  public UUID startNewEpoch() {
    db.createNativeMutationQuery("delete from change_row").executeUpdate();
    UUID epoch = UUID.randomUUID();
    db.createNativeMutationQuery(
            "update history_epoch set epoch = :epoch, trimmed_xid = 0, trimmed_seq = 0")
        .setParameter("epoch", epoch)
        .executeUpdate();
    return epoch;
  }

  private static Position position(Object xid, Object seq) {
    return new Position(((Number) xid).longValue(), ((Number) seq).longValue());
  }
}
