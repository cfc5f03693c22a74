package club.emberwell.desk.log;

import club.emberwell.desk.SqlRepository;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.hibernate.Session;

/** Reads the log; nobody can change it. */
@ApplicationScoped
class AuditTrailRepository extends SqlRepository {
  AuditTrailRepository(Session db) {
    super(db);
  }

  /** Lines before a number, newest first. */
  List<AuditLine> before(AuditFilter filter, long before, int most) {
    List<Object> parameters = new ArrayList<>(List.of("before", before, "most", most));
    StringBuilder where = new StringBuilder("where seq < :before");
    add(where, parameters, " and action = :action", "action", filter.action());
    add(where, parameters, " and entity = :entity", "entity", filter.entity());
    add(where, parameters, " and entity_id = :id", "id", filter.entityId());
    add(where, parameters, " and at >= :from", "from", filter.from());
    add(where, parameters, " and at < :to", "to", filter.to());
    if (filter.who() != null) {
      // whoever changed their name is found under both
      where.append(
          " and (lower(actor_label) = :who"
              + " or actor_id in (select id from member where lower(handle) = :who))");
      parameters.addAll(List.of("who", filter.who().toLowerCase(Locale.ROOT)));
    }
    return rows(
            "select seq, at, actor_label, action, entity, entity_id, reason,"
                + " cast(detail as text) as detail from audit_line "
                + where
                + " order by seq desc limit :most",
            parameters.toArray())
        .stream()
        .map(AuditTrailRepository::line)
        .toList();
  }

  private static void add(
      StringBuilder where, List<Object> parameters, String clause, String name, Object value) {
    if (value != null) {
      where.append(clause);
      parameters.add(name);
      parameters.add(value);
    }
  }

  private static AuditLine line(Row row) {
    return new AuditLine(
        row.number("seq"),
        row.time("at"),
        row.text("actor_label"),
        row.text("action"),
        row.text("entity"),
        row.text("entity_id"),
        row.text("reason"),
        row.text("detail"));
  }
}
