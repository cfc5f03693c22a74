package club.emberwell.desk.undo;

import club.emberwell.desk.SqlRepository;
import club.emberwell.desk.rule.RuleCode;
import club.emberwell.entry.EntryRef;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.hibernate.Session;

/** What is to be undone, and how far it came. */
@ApplicationScoped
class UndoRepository extends SqlRepository {
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
              + UndoCandidateRepository.of(member)
              + ") as c order by at desc, id on conflict do nothing",
          UndoCandidateRepository.about(member, rule, since, "run", run));
    }
    return added > 0;
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

  void setNote(RuleCode rule, EntryRef ref, String from, String to) {
    write(
        "update desk_rule_note set state = :to where rule = :rule and entry_id = :id"
            + " and state = :was",
        "to",
        to,
        "rule",
        rule.code(),
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
