package club.emberwell.entry.change;

import club.emberwell.entry.change.ChangeLog.Position;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.hibernate.Session;

/** That reports changed, kept for good. */
@ApplicationScoped
class ReportChangeRepository {
  private final Session db;

  ReportChangeRepository(Session db) {
    this.db = db;
  }

  /** A row; numbers of transactions travel as numbers. */
  record Row(long xid, long seq, UUID report, Instant at) {
    Position position() {
      return new Position(xid, seq);
    }
  }

  /** The newest row of each report behind a position, of transactions that are all over. */
  List<Row> since(Position position, Instant at, int most) {
    return db.createNativeQuery(
            """
            select cast(cast(c.xid as text) as bigint), c.seq, c.report_id, c.at
            from report_change c
            where (c.xid, c.seq) > (cast(cast(:xid as text) as xid8), cast(:seq as bigint))
              and c.xid < pg_snapshot_xmin(pg_current_snapshot())
              and c.at >= :since
              and not exists (select 1 from report_change n
                where n.report_id = c.report_id and (n.xid, n.seq) > (c.xid, c.seq)
                  and n.xid < pg_snapshot_xmin(pg_current_snapshot()))
            order by c.xid, c.seq
            limit :most""",
            Row.class)
        .setParameter("xid", position.xid())
        .setParameter("seq", position.seq())
        .setParameter("since", at)
        .setParameter("most", most)
        .getResultList();
  }

  /** Whether there is a row at a position or behind it; of open transactions too. */
  boolean reach(Position position) {
    return db.createNativeQuery(
            """
            select exists (select 1 from report_change
              where (xid, seq) >= (cast(cast(:xid as text) as xid8), cast(:seq as bigint)))""",
            Boolean.class)
        .setParameter("xid", position.xid())
        .setParameter("seq", position.seq())
        .getSingleResult();
  }

  /** Drops rows after which the same report changed again. */
  void deleteOvertaken() {
    db.createNativeMutationQuery(
            """
            delete from report_change c
            where exists (select 1 from report_change n
              where n.report_id = c.report_id and (n.xid, n.seq) > (c.xid, c.seq))""")
        .executeUpdate();
  }

  /** Makes new rows, for the numbers of transactions are those of another server. */
  void renew() {
    db.createNativeMutationQuery("delete from report_change").executeUpdate();
    db.createNativeMutationQuery(
            """
            insert into report_change (report_id)
            select id from entry where kind = 'report' order by number""")
        .executeUpdate();
  }
}
