package club.emberwell.desk.undo;

import club.emberwell.desk.DeskLimits;
import club.emberwell.desk.SqlRepository;
import club.emberwell.desk.rule.RuleCode;
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
      """
      select 'revert', e.kind, e.id, e.title, e.state, v.first - 1, e.created_at
      from (
        select entry_id, min(version) as first from entry_revision
        where member_id = :member and action = 'edited' and at >= :since
        group by entry_id) v
      join entry e on e.id = v.entry_id
      where e.state not in ('withdrawn', 'removed')
        and not (e.member_id = :member and e.created_at >= :since)
        and not exists (select 1 from entry_revision o
          where o.entry_id = v.entry_id and o.version > v.first and o.action = 'edited'
            and o.member_id <> :member)
      """;

  /** Decisions d about entries e that are the last word on them. */
  private static final String LATEST =
      """
      from entry_revision d join entry e on e.id = d.entry_id
      where d.at >= :since and d.action in ('held', 'removed', 'approved', 'restored')
        and not exists (select 1 from entry_revision l
          where l.entry_id = d.entry_id and l.version > d.version
            and l.action in ('held', 'removed', 'approved', 'restored'))
      """;

  private static final String BY_MEMBER =
      """
      select 'remove' as step, e.kind as kind, e.id as id, e.title as title, e.state as was,
        0 as back_to, e.created_at as at
      from entry e
      where e.member_id = :member and e.created_at >= :since
        and e.state in ('live', 'waiting', 'held')
      union all
      %s
      union all
      select case when d.action in ('held', 'removed') then 'release' else 'hold' end,
        e.kind, e.id, e.title, e.state, 0, d.at
      %s and d.member_id = :member
        and ((d.action in ('held', 'removed') and e.state in ('held', 'removed'))
          or (d.action in ('approved', 'restored') and e.state = 'live'))
      union all
      select 'flag', 'flag', f.id, f.reason, f.state, 0, f.created_at
      from desk_flag f
      where f.member_id = :member and f.created_at >= :since and f.state = 'open'
      union all
      select 'proposal', 'caution', p.id, p.caution_id, p.state, 0, p.created_at
      from desk_caution_proposal p
      where p.member_id = :member and p.created_at >= :since and p.state = 'waiting'
      union all
      select 'unban', 'member', b.id, b.handle, b.status, 0, max(a.at)
      from audit a join member b on cast(b.id as text) = a.entity_id
      where a.actor_id = :member and a.action = 'ban' and a.at >= :since and b.status = 'banned'
      group by b.id, b.handle, b.status
      """
          .formatted(EDITS, LATEST);

  private static final String BY_RULE =
      """
      select 'release' as step, e.kind as kind, e.id as id, e.title as title, e.state as was,
        0 as back_to, d.at as at
      %s and d.rule = :rule and d.action = 'held' and e.state = 'held'
      union all
      select 'note', e.kind, e.id, n.detail, n.state, 0, n.at
      from desk_rule_note n join entry e on e.id = n.entry_id
      where n.rule = :rule and n.at >= :since and n.state = 'open'
      """
          .formatted(LATEST);

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
                + " where member_id = :member and at >= :since limit :most) as c",
            "member",
            member,
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
