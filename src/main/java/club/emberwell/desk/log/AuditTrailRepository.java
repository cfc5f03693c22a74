package club.emberwell.desk.log;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.Tuple;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.hibernate.Session;

/** Reads the log; nobody can change it. */
@ApplicationScoped
class AuditTrailRepository {
  private final Session db;

  AuditTrailRepository(Session db) {
    this.db = db;
  }

  /** Lines before a number, newest first. */
  List<AuditLine> before(AuditFilter filter, long before, int most) {
    String who = filter.by() == null ? null : filter.by().toLowerCase(Locale.ROOT);
    return db.createNativeQuery(
            """
            select seq, at, member_id, who, action, entity, entity_id, reason,
              cast(detail as text) as detail
            from audit_line
            where seq < :before
              and (cast(:action as text) is null or action = :action)
              and (cast(:entity as text) is null or entity = :entity)
              and (cast(:id as text) is null or entity_id = :id)
              and (cast(:from as timestamptz) is null or at >= :from)
              and (cast(:to as timestamptz) is null or at < :to)
              and (cast(:who as text) is null
                or member_id in (select m.id from member m where lower(m.handle) = :who)
                or member_id is null and who = :who)
            order by seq desc limit :most
            """,
            Tuple.class)
        .setParameter("before", before)
        .setParameter("action", filter.action(), String.class)
        .setParameter("entity", filter.kind(), String.class)
        .setParameter("id", filter.id(), String.class)
        .setParameter("from", filter.from(), Instant.class)
        .setParameter("to", filter.to(), Instant.class)
        .setParameter("who", who, String.class)
        .setParameter("most", most)
        .getResultStream()
        .map(AuditTrailRepository::line)
        .toList();
  }

  private static AuditLine line(Tuple row) {
    return new AuditLine(
        row.get("seq", Long.class),
        row.get("at", Instant.class),
        new AuditLine.Doer(row.get("member_id", UUID.class), row.get("who", String.class)),
        row.get("action", String.class),
        row.get("entity", String.class),
        row.get("entity_id", String.class),
        row.get("reason", String.class),
        row.get("detail", String.class));
  }
}
