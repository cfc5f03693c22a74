package club.emberwell.desk;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.hibernate.Session;

/** What is to be undone, and how far it came. */
@ApplicationScoped
class UndoRepository extends SqlRepository {
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

  private static final String RUNS =
      "select u.id as id, u.member_id as member,"
          + " case when m.status = 'erased' then 'former member' else m.handle end as handle,"
          + " u.rule as rule, u.since as since, u.reason as reason, u.state as state,"
          + " u.started_by as started_by, b.handle as said_by, u.started_at as started_at,"
          + " u.restored_by as restored_by, c.total as total, c.done as done,"
          + " c.restored as restored, c.skipped as skipped from desk_undo u"
          + " left join member m on m.id = u.member_id join member b on b.id = u.started_by"
          + " cross join lateral (select count(*) as total, count(done_at) as done,"
          + " count(restored_at) as restored, count(skipped) as skipped from desk_undo_item i"
          + " where i.run_id = u.id) c ";

  UndoRepository(Session db) {
    super(db);
  }

  /** A step that is due. */
  record Due(UndoStep step, String kind, UUID id, String was, int backTo, Integer wasVersion) {}

  List<UndoPlan.Count> counts(UUID member, RuleCode rule, Instant since) {
    flush();
    return rows(
            "select step, kind, count(*) as n from ("
                + candidates(member)
                + ") as c group by step, kind order by step, kind",
            subject(member, rule, since))
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
                + candidates(member)
                + ") as c order by at desc, id limit :most",
            and(subject(member, rule, since), "most", most))
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

  /** Keeps a run with all its steps; false where it is there already. */
  boolean begin(
      UUID run, UUID member, RuleCode rule, Instant since, String why, UUID by, Instant now) {
    int added =
        write(
            "insert into desk_undo"
                + " (id, subject, member_id, rule, since, reason, state, started_by, started_at)"
                + " values (:id, :subject, cast(:member as uuid), :rule, :since, :why, 'running',"
                + " :by, :now) on conflict do nothing",
            "id",
            run,
            "subject",
            member == null ? "rule" : "member",
            "member",
            member == null ? null : member.toString(),
            "rule",
            rule == null ? null : rule.code(),
            "since",
            since,
            "why",
            why,
            "by",
            by,
            "now",
            now);
    if (added > 0) {
      write(
          "insert into desk_undo_item (run_id, step, kind, item_id, title, was, back_to)"
              + " select :run, step, kind, id, left(coalesce(title, ''), 200), was, back_to from ("
              + candidates(member)
              + ") as c order by at desc, id on conflict do nothing",
          and(subject(member, rule, since), "run", run));
    }
    return added > 0;
  }

  private static String candidates(UUID member) {
    return member == null ? BY_RULE : BY_MEMBER;
  }

  private static Object[] subject(UUID member, RuleCode rule, Instant since) {
    return member == null
        ? new Object[] {"rule", rule.code(), "since", since}
        : new Object[] {"member", member, "since", since};
  }

  private static Object[] and(Object[] parameters, Object... more) {
    List<Object> all = new ArrayList<>(Arrays.asList(parameters));
    all.addAll(Arrays.asList(more));
    return all.toArray();
  }

  Optional<UndoRun> run(UUID id) {
    return rows(RUNS + "where u.id = :id", "id", id).stream().findFirst().map(UndoRepository::undo);
  }

  List<UndoRun> newest(int from, int most) {
    return rows(
            RUNS + "order by u.started_at desc, u.id offset :skip limit :most",
            "skip",
            from,
            "most",
            most)
        .stream()
        .map(UndoRepository::undo)
        .toList();
  }

  /** Runs that are not over. */
  List<UUID> open() {
    return rows("select id from desk_undo where state in ('running', 'restoring')").stream()
        .map(r -> r.uuid("id"))
        .toList();
  }

  /** The next step of a run, held until the transaction ends; one that another node is at waits. */
  Optional<Due> due(UUID run, boolean restoring) {
    return rows(
            "select step, kind, item_id, was, back_to, was_version from desk_undo_item"
                + " where run_id = :run and "
                + open(restoring)
                + " order by position limit 1 for update skip locked",
            "run",
            run)
        .stream()
        .findFirst()
        .map(
            r ->
                new Due(
                    UndoStep.of(r.text("step")).orElseThrow(),
                    r.text("kind"),
                    r.uuid("item_id"),
                    r.text("was"),
                    (int) r.number("back_to"),
                    r.has("was_version") ? (int) r.number("was_version") : null));
  }

  /** Whether a step is left, even one that another node is at. */
  boolean left(UUID run, boolean restoring) {
    return !rows(
            "select 1 from desk_undo_item where run_id = :run and " + open(restoring) + " limit 1",
            "run",
            run)
        .isEmpty();
  }

  private static String open(boolean restoring) {
    return restoring
        ? "done_at is not null and skipped is null and restored_at is null"
        : "done_at is null";
  }

  void done(UUID run, Due due, Integer version, String skipped, Instant now) {
    write(
        "update desk_undo_item set done_at = coalesce(done_at, :now),"
            + " was_version = coalesce(cast(:version as integer), was_version),"
            + " skipped = :skipped"
            + " where run_id = :run and step = :step and kind = :kind and item_id = :id",
        "now",
        now,
        "version",
        version == null ? null : version.toString(),
        "skipped",
        skipped,
        "run",
        run,
        "step",
        due.step().code(),
        "kind",
        due.kind(),
        "id",
        due.id());
  }

  void restored(UUID run, Due due, Instant now) {
    write(
        "update desk_undo_item set restored_at = :now"
            + " where run_id = :run and step = :step and kind = :kind and item_id = :id",
        "now",
        now,
        "run",
        run,
        "step",
        due.step().code(),
        "kind",
        due.kind(),
        "id",
        due.id());
  }

  /** Moves a run on; false where it was not in that state. */
  boolean enter(UUID run, String from, String to, UUID restoredBy) {
    return write(
            "update desk_undo set state = :to,"
                + " restored_by = coalesce(cast(:by as uuid), restored_by)"
                + " where id = :run and state = :was",
            "to",
            to,
            "by",
            restoredBy == null ? null : restoredBy.toString(),
            "run",
            run,
            "was",
            from)
        > 0;
  }

  void setFlag(UUID id, String from, String to) {
    write(
        "update desk_flag set state = :to where id = :id and state = :was",
        "to",
        to,
        "id",
        id,
        "was",
        from);
  }

  void setProposal(UUID id, String from, String to) {
    write(
        "update desk_caution_proposal set state = :to where id = :id and state = :was",
        "to",
        to,
        "id",
        id,
        "was",
        from);
  }

  void setNote(RuleCode rule, ItemRef ref, String from, String to) {
    write(
        "update desk_rule_note set state = :to where rule = :rule and item_kind = :kind"
            + " and item_id = :id and state = :was",
        "to",
        to,
        "rule",
        rule.code(),
        "kind",
        ref.kind().code(),
        "id",
        ref.id(),
        "was",
        from);
  }

  private static UndoRun undo(Row row) {
    return new UndoRun(
        row.uuid("id"),
        row.uuid("member"),
        row.text("handle"),
        row.has("rule") ? RuleCode.of(row.text("rule")).orElseThrow() : null,
        row.time("since"),
        row.text("reason"),
        row.text("state"),
        row.uuid("started_by"),
        row.text("said_by"),
        row.time("started_at"),
        row.uuid("restored_by"),
        row.number("total"),
        row.number("done"),
        row.number("restored"),
        row.number("skipped"));
  }
}
