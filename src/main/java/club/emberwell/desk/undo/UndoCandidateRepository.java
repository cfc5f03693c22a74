package club.emberwell.desk.undo;

import club.emberwell.desk.DeskLimits;
import club.emberwell.desk.rule.RuleCode;
import club.emberwell.entry.EntryKind;
import club.emberwell.remark.Coded;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.hibernate.Session;
import org.hibernate.query.CommonQueryContract;

/** What a member or a rule did since a time and can be undone. */
@ApplicationScoped
class UndoCandidateRepository {
  /** An edit nobody else built on is undone; others keep their work. */
  private static final String EDITS =
      """
      select 'revert', e.kind, e.id, e.title, e.state, v.first - 1, e.created_at
      from (
        select entry_id, min(version) as first from entry_revision
        where member_id = :member and action = 'edited' and at >= :since
        group by entry_id) v
      join entry e on e.id = v.entry_id
      where e.state not in ('withdrawn', 'removed') and e.kind in (:shared)
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
        and e.state in ('live', 'waiting', 'held') and e.kind in (:shared)
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
      where a.member_id = :member and a.action = 'ban' and a.at >= :since and b.status = 'banned'
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

  /** The rows to undo, of a member or of a rule: step, kind, id, title, was, back_to, at. */
  private static final String CANDIDATES = "%s union all %s".formatted(BY_MEMBER, BY_RULE);

  private static final List<String> SHARED =
      EntryKind.SHARED.stream().map(EntryKind::code).toList();

  private final Session db;

  UndoCandidateRepository(Session db) {
    this.db = db;
  }

  private record Counted(String step, String kind, long count) {}

  private record Listed(String step, String kind, UUID id, String title) {}

  List<UndoPlan.Count> counts(UUID member, RuleCode rule, Instant since) {
    String counted =
        "select step, kind, count(*) from (%s) c group by step, kind order by step, kind";
    return about(
            db.createNativeQuery(counted.formatted(CANDIDATES), Counted.class), member, rule, since)
        .getResultStream()
        .map(row -> new UndoPlan.Count(step(row.step), row.kind, row.count))
        .toList();
  }

  List<UndoPlan.Line> first(UUID member, RuleCode rule, Instant since, int most) {
    String first = "select step, kind, id, title from (%s) c order by at desc, id limit :most";
    return about(
            db.createNativeQuery(first.formatted(CANDIDATES), Listed.class), member, rule, since)
        .setParameter("most", most)
        .getResultStream()
        .map(row -> new UndoPlan.Line(step(row.step), row.kind, row.id, row.title))
        .toList();
  }

  /** Makes the steps of a run of them. */
  void keep(UUID run, UUID member, RuleCode rule, Instant since) {
    String keep =
        """
        insert into desk_undo_item (run_id, step, kind, item_id, was, back_to)
        select :run, step, kind, id, was, back_to from (%s) c
        order by at desc, id
        on conflict do nothing
        """;
    about(db.createNativeMutationQuery(keep.formatted(CANDIDATES)), member, rule, since)
        .setParameter("run", run)
        .executeUpdate();
  }

  /**
   * Makes the steps of a decision about what a rule noticed of a member's entries.
   *
   * @param step what happens to the entries that can take it; null = nothing
   * @return how many notes there were
   */
  int keepTogether(UUID run, RuleCode rule, UUID member, UndoStep step) {
    if (step != null) {
      db.createNativeMutationQuery(
              """
              insert into desk_undo_item (run_id, step, kind, item_id, was, back_to)
              select :run, :step, e.kind, e.id, e.state, 0
              from desk_rule_note n join entry e on e.id = n.entry_id
              where n.state = 'open' and n.rule = :rule and e.member_id = :member
                and (:step = 'release' and e.state = 'held'
                  or :step = 'hold' and e.state in ('live', 'waiting')
                  or :step = 'remove' and e.state in ('live', 'waiting', 'held'))
              order by n.id
              """)
          .setParameter("run", run)
          .setParameter("step", step.code())
          .setParameter("rule", rule.code())
          .setParameter("member", member)
          .executeUpdate();
    }
    return db.createNativeMutationQuery(
            """
            insert into desk_undo_item (run_id, step, kind, item_id, was, back_to)
            select :run, 'seen', e.kind, e.id, n.state, 0
            from desk_rule_note n join entry e on e.id = n.entry_id
            where n.state = 'open' and n.rule = :rule and e.member_id = :member
            order by n.id
            """)
        .setParameter("run", run)
        .setParameter("rule", rule.code())
        .setParameter("member", member)
        .executeUpdate();
  }

  int vocabulary(UUID member, Instant since) {
    return db.createNativeQuery(
            """
            select cast(count(*) as integer) from (
              select 1 from catalog_revision where member_id = :member and at >= :since
              limit :most) c
            """,
            Integer.class)
        .setParameter("member", member)
        .setParameter("since", since)
        .setParameter("most", DeskLimits.COUNT + 1)
        .getSingleResult();
  }

  private <Q extends CommonQueryContract> Q about(
      Q query, UUID member, RuleCode rule, Instant since) {
    query.setParameter("member", member, UUID.class);
    query.setParameter("rule", rule == null ? null : rule.code(), String.class);
    query.setParameter("since", since);
    query.setParameter("shared", SHARED);
    return query;
  }

  private static UndoStep step(String code) {
    return Coded.of(UndoStep.class, code).orElseThrow();
  }
}
