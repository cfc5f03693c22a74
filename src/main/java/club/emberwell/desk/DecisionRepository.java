package club.emberwell.desk;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.hibernate.Session;

/** Rows of decisions, only ever added. */
@ApplicationScoped
class DecisionRepository extends SqlRepository {
  private static final String SELECT =
      "select d.number as number, d.item_kind as kind, d.item_id as id, d.author_id as author,"
          + " d.rule as rule, d.action as action, d.reason as reason, d.at as at,"
          + " case when m.status = 'erased' then 'former member'"
          + " else coalesce(m.handle, 'rule ' || d.rule) end as said_by,"
          + " i.title as title, i.parent_id as parent"
          + " from desk_decision d left join member m on m.id = d.moderator_id"
          + " left join desk_item i on i.kind = d.item_kind and i.id = d.item_id ";

  DecisionRepository(Session db) {
    super(db);
  }

  void add(Item item, UUID moderator, String rule, Action action, String reason, Instant at) {
    write(
        "insert into desk_decision"
            + " (item_kind, item_id, author_id, moderator_id, rule, action, reason, at)"
            + " values (:kind, :id, :author, cast(:moderator as uuid), :rule, :action, :reason,"
            + " :at)",
        "kind",
        item.ref().kind().code(),
        "id",
        item.ref().id(),
        "author",
        item.author(),
        "moderator",
        moderator == null ? null : moderator.toString(),
        "rule",
        rule,
        "action",
        action.code(),
        "reason",
        reason,
        "at",
        at);
  }

  /** What was decided about an item, newest first. */
  List<Decision> about(ItemRef ref, int most) {
    return rows(
            SELECT
                + "where d.item_kind = :kind and d.item_id = :id order by d.number desc"
                + " limit :most",
            "kind",
            ref.kind().code(),
            "id",
            ref.id(),
            "most",
            most)
        .stream()
        .map(DecisionRepository::decision)
        .toList();
  }

  /** What was decided about a member's items, newest first. */
  List<Decision> toldTo(UUID author, int from, int most) {
    return rows(
            SELECT
                + "where d.author_id = :author and not (d.action = 'approve')"
                + " order by d.number desc offset :skip limit :most",
            "author",
            author,
            "skip",
            from,
            "most",
            most)
        .stream()
        .map(DecisionRepository::decision)
        .toList();
  }

  private static Decision decision(Row row) {
    return new Decision(
        row.number("number"),
        new ItemRef(ItemKind.of(row.text("kind")).orElseThrow(), row.uuid("id")),
        row.uuid("author"),
        row.text("said_by"),
        row.text("rule"),
        Action.of(row.text("action")).orElseThrow(),
        row.text("reason"),
        row.time("at"),
        row.has("title") ? row.text("title") : "",
        row.uuid("parent"));
  }
}
