package club.emberwell.entry.change;

import club.emberwell.entry.change.ChangeLog.Mark;
import club.emberwell.entry.change.ChangeLog.Position;
import club.emberwell.entry.change.Histories.History;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.UUID;
import org.hibernate.Session;

/** Which history the database has, where it lies, and what begins with a new one. */
@ApplicationScoped
class HistoryRepository {
  private final Session db;

  HistoryRepository(Session db) {
    this.db = db;
  }

  private record Row(
      UUID epoch, long number, long xid, long seq, String liesAt, String server, String place) {
    History history() {
      String here = String.join("/", server, place);
      return new History(epoch, number, new Position(xid, seq), here, liesAt);
    }
  }

  /** With the server's identity, its timeline, and which database and table this is. */
  History history() {
    return db.createNativeQuery(
            """
            select h.epoch, h.number, h.trimmed_xid, h.trimmed_seq, h.lies_at,
              concat_ws('/', c.system_identifier,
                substr(pg_walfile_name(pg_current_wal_insert_lsn()), 1, 8)) as server,
              concat_ws('/', d.oid, h.tableoid) as place
            from history_epoch h, pg_control_system() c, pg_database d
            where d.datname = current_database()""",
            Row.class)
        .getSingleResult()
        .history();
  }

  /** For servers that do not say who they are. */
  History historyWithoutServer() {
    return db.createNativeQuery(
            """
            select h.epoch, h.number, h.trimmed_xid, h.trimmed_seq, h.lies_at,
              '-/-' as server, concat_ws('/', d.oid, h.tableoid) as place
            from history_epoch h, pg_database d
            where d.datname = current_database()""",
            Row.class)
        .getSingleResult()
        .history();
  }

  UUID epoch() {
    return db.createNativeQuery("select epoch from history_epoch", UUID.class).getSingleResult();
  }

  /** Until the transaction ends no other node begins a history. */
  void lock() {
    db.createNativeQuery("select epoch from history_epoch for update", UUID.class)
        .getSingleResult();
  }

  /**
   * Whether a restore that goes on table by table is past its rows: primary keys are made after
   * them, and would not be if we wrote rows in between.
   */
  boolean areWhole() {
    return db.createNativeQuery(
            """
            select count(*) = 10 from pg_index
            where indisprimary and indisvalid and indrelid in (to_regclass('history_epoch'),
              to_regclass('change_row'), to_regclass('change_reader'), to_regclass('report_change'),
              to_regclass('erasure'), to_regclass('data_package'), to_regclass('member'),
              to_regclass('entry'), to_regclass('report'), to_regclass('trial'))""",
            Boolean.class)
        .getSingleResult();
  }

  /** Whether a row that was read is still there, whatever its transaction is called by now. */
  boolean holds(Mark mark) {
    return db.createNativeQuery(
            """
            select exists (
              select 1 from change_row where seq = :seq and entity_id = :id and at = :at)""",
            Boolean.class)
        .setParameter("seq", mark.position().seq())
        .setParameter("id", mark.id())
        .setParameter("at", mark.at())
        .getSingleResult();
  }

  /**
   * Puts all rows before any of this server's transactions (2 is no number of one that runs), and
   * readers where they were among them. Between rows written at once a reader may be put a little
   * too early: it takes twice rather than never.
   */
  void renumber(UUID over, UUID epoch) {
    db.createNativeMutationQuery(
            """
            update change_reader r set epoch = :epoch, xid = 2, seq = coalesce(
              (select min(c.seq) - 1 from change_row c
                where c.xid > cast(cast(r.xid as text) as xid8) or c.seq > r.seq),
              (select max(c.seq) from change_row c), 0)
            where r.epoch = :over""")
        .setParameter("epoch", epoch)
        .setParameter("over", over)
        .executeUpdate();
    db.createNativeMutationQuery("update change_row set xid = '2' where xid <> '2'")
        .executeUpdate();
  }

  void begin(UUID epoch, long number, String liesAt) {
    db.createNativeMutationQuery(
            """
            update history_epoch set epoch = :epoch, number = :number, lies_at = :liesAt,
              trimmed_xid = 0, trimmed_seq = 0""")
        .setParameter("epoch", epoch)
        .setParameter("number", number)
        .setParameter("liesAt", liesAt)
        .executeUpdate();
  }
}
