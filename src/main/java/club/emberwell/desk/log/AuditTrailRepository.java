package club.emberwell.desk.log;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
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
    String who = filter.who() == null ? null : filter.who().toLowerCase(Locale.ROOT);
    return db.createNativeQuery(
            """
            select seq, at, who, action, entity, entity_id, reason, cast(detail as text)
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
            AuditLine.class)
        .setParameter("before", before)
        .setParameter("action", filter.action(), String.class)
        .setParameter("entity", filter.entity(), String.class)
        .setParameter("id", filter.entityId(), String.class)
        .setParameter("from", filter.from(), Instant.class)
        .setParameter("to", filter.to(), Instant.class)
        .setParameter("who", who, String.class)
        .setParameter("most", most)
        .getResultList();
  }
}
