package club.emberwell.desk;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import org.hibernate.Session;

/** What a member or a rule did since a time and can be undone. */
@ApplicationScoped
class UndoCandidateRepository extends SqlRepository {
  /** An edit nobody else built on is undone; others keep their work. */
  private static final String EDITS =
      " select 'revert', i.kind, i.id, i.title, i.state, v.first - 1, i.created_at"
          + " from (select %2$s as id, min(version) as first from %1$s where editor_id = :member"
          + " and action = 'EDITED' and at >= :since group by %2$s) v"
          + " join desk_item i on i.id = v.id and i.kind %3$s"
          + " where i.state not in ('WITHDRAWN', 'REMOVED')"
          + " and not (i.member_id = :member and i.created_at >= :since)"
          + " and not exists (select 1 from %1$s o where o.%2$s = v.id and o.version > v.first"
          + " and o.action = 'EDITED' and o.editor_id <> :member)";

  private static final String LATEST =
      "d.number = (select max(l.number) from desk_decision l"
          + " where l.item_kind = d.item_kind and l.item_id = d.item_id)";

  private static final String BY_MEMBER =
      "select 'remove' as step, i.kind as kind, i.id as id, i.title as title, i.state as was,"
          + " 0 as back_to, i.created_at as at from desk_item i where i.member_id = :member"
          + " and i.created_at >= :since and i.state in ('LIVE', 'WAITING', 'HELD')"
          + " union all"
          + EDITS.formatted("report_revision", "report_id", "= 'report'")
          + " union all"
          + EDITS.formatted("talk_revision", "entry_id", "in ('question', 'answer', 'notice')")
          + " union all select case when d.action in ('hold', 'remove') then 'release'"
          + " else 'hold' end, i.kind, i.id, i.title, i.state, 0, d.at from desk_decision d"
          + " join desk_item i on i.kind = d.item_kind and i.id = d.item_id"
          + " where d.moderator_id = :member and d.at >= :since and "
          + LATEST
          + " and ((d.action in ('hold', 'remove') and i.state in ('HELD', 'REMOVED'))"
          + " or (d.action in ('approve', 'restore') and i.state = 'LIVE'))"
          + " union all select 'flag', 'flag', f.id, f.reason, f.state, 0, f.created_at"
          + " from desk_flag f where f.member_id = :member and f.created_at >= :since"
          + " and f.state = 'open'"
          + " union all select 'proposal', 'caution', p.id, p.caution_id, p.state, 0, p.created_at"
          + " from desk_caution_proposal p where p.member_id = :member and p.created_at >= :since"
          + " and p.state = 'waiting'"
          + " union all select 'unban', 'member', b.id, b.handle, b.status, 0, max(a.at)"
          + " from audit a join member b on cast(b.id as text) = a.entity_id"
          + " where a.actor_id = :member and a.action = 'ban' and a.at >= :since"
          + " and b.status = 'banned' group by b.id, b.handle, b.status";

  private static final String BY_RULE =
      "select 'release' as step, i.kind as kind, i.id as id, i.title as title, i.state as was,"
          + " 0 as back_to, d.at as at from desk_decision d"
          + " join desk_item i on i.kind = d.item_kind and i.id = d.item_id"
          + " where d.rule = :rule and d.at >= :since and "
          + LATEST
          + " and d.action = 'hold' and i.state = 'HELD'"
          + " union all select 'note', n.item_kind, n.item_id, n.detail, n.state, 0, n.at"
          + " from desk_rule_note n where n.rule = :rule and n.at >= :since and n.state = 'open'";

  UndoCandidateRepository(Session db) {
    super(db);
  }

  List<UndoPlan.Count> counts(UUID member, RuleCode rule, Instant since) {
    flush();
    return rows(
            "select step, kind, count(*) as n from ("
                + of(member)
                + ") as c group by step, kind order by step, kind",
            about(member, rule, since))
        .stream()
        .map(
            r ->
                new UndoPlan.Count(
                    UndoStep.of(r.text("step")).orElseThrow(), r.text("kind"), r.number("n")))
        .toList();
  }

  List<UndoPlan.Line> first(UUID member, RuleCode rule, Instant since, int most) {
    return rows(
            "select step, kind, id, title from ("
                + of(member)
                + ") as c order by at desc, id limit :most",
            about(member, rule, since, "most", most))
        .stream()
        .map(
            r ->
                new UndoPlan.Line(
                    UndoStep.of(r.text("step")).orElseThrow(),
                    r.text("kind"),
                    r.uuid("id"),
                    r.text("title")))
        .toList();
  }

  int vocabulary(UUID member, Instant since) {
    return (int)
        number(
            "select count(*) as n from (select 1 from catalog_revision"
                + " where who = :who and at >= :since limit :most) as c",
            "who",
            member.toString(),
            "since",
            since,
            "most",
            DeskLimits.COUNT + 1);
  }

  /** The rows to undo: step, kind, id, title, was, back_to, at. */
  static String of(UUID member) {
    return member == null ? BY_RULE : BY_MEMBER;
  }

  /** The parameters of {@link #of} and some more. */
  static Object[] about(UUID member, RuleCode rule, Instant since, Object... more) {
    List<Object> all = new ArrayList<>();
    all.addAll(member == null ? List.of("rule", rule.code()) : List.of("member", member));
    all.addAll(List.of("since", since));
    all.addAll(Arrays.asList(more));
    return all.toArray();
  }
}
