package club.emberwell.desk.undo;

import club.emberwell.desk.rule.RuleCode;
import club.emberwell.entry.EntryRef;
import club.emberwell.listing.Place;
import club.emberwell.remark.Coded;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.hibernate.Session;
import org.hibernate.query.SelectionQuery;

/** What is to be undone, and how far it came. */
@ApplicationScoped
class UndoRepository {
  /** An undo u with the names of whose deeds it undoes and of who began it. */
  private static final String RUNS =
      """
      select u, m.handle, b.handle
      from UndoEntity u
      left join Member m on m.id = u.memberId
      join Member b on b.id = u.startedBy
      """;

  private final Session db;

  UndoRepository(Session db) {
    this.db = db;
  }

  private record Found(UndoEntity run, String about, String by) {}

  private record Steps(UUID run, long total, long done, long restored, long skipped) {
    UndoRun.Progress progress() {
      return new UndoRun.Progress(total, done, restored, skipped);
    }
  }

  /** A step that is due. */
  record Due(String code, String kind, UUID id, String was, int backTo, Integer wasVersion) {
    UndoStep step() {
      return Coded.of(UndoStep.class, code).orElseThrow();
    }
  }

  /**
   * Keeps a run; false where it is there already.
   *
   * @param member whose deeds, or null for those of a rule
   */
  boolean begin(UUID run, UndoRun.Subject what, String why, UUID by, Instant now) {
    RuleCode rule = what.rule();
    return db.createNativeMutationQuery(
                """
                insert into desk_undo
                  (id, member_id, rule, since, reason, state, started_by, started_at)
                values (:id, :member, :rule, :since, :why, 'running', :by, :now)
                on conflict do nothing
                """)
            .setParameter("id", run)
            .setParameter("member", what.member(), UUID.class)
            .setParameter("rule", rule == null ? null : rule.code(), String.class)
            .setParameter("since", what.since())
            .setParameter("why", why)
            .setParameter("by", by)
            .setParameter("now", now)
            .executeUpdate()
        > 0;
  }

  Optional<UndoRun> run(UUID id) {
    return runs(query("where u.id = :id").setParameter("id", id)).stream().findFirst();
  }

  List<UndoRun> newest(Place place) {
    return runs(
        query("where (u.startedAt, u.id) < (:at, :id) order by u.startedAt desc, u.id desc")
            .setParameter("at", place.time(0))
            .setParameter("id", place.id(1))
            .setFirstResult(place.from())
            .setMaxResults(place.most()));
  }

  private SelectionQuery<Found> query(String which) {
    return db.createSelectionQuery(RUNS.concat(which), Found.class);
  }

  private List<UndoRun> runs(SelectionQuery<Found> query) {
    List<Found> found = query.getResultList();
    Map<UUID, Steps> steps = steps(found.stream().map(each -> each.run.id).toList());
    return found.stream()
        .map(
            each -> {
              Steps of = steps.get(each.run.id);
              return each.run.toRun(
                  each.about, each.by, of == null ? UndoRun.Progress.NONE : of.progress());
            })
        .toList();
  }

  private Map<UUID, Steps> steps(List<UUID> runs) {
    return db.createNativeQuery(
            """
            select run_id, count(*) as total, count(done_at) as done,
              count(restored_at) as restored, count(skipped) as skipped
            from desk_undo_item where run_id in (:runs) group by run_id
            """,
            Steps.class)
        .setParameterList("runs", runs)
        .getResultStream()
        .collect(Collectors.toMap(Steps::run, Function.identity()));
  }

  /** Runs that are not over. */
  List<UUID> open() {
    return db.createNativeQuery(
            "select id from desk_undo where state in ('running', 'restoring')", UUID.class)
        .getResultList();
  }

  /** The next step of a run, held until the transaction ends; one that another node is at waits. */
  Optional<Due> due(UUID run, boolean restoring) {
    return db.createNativeQuery(
            """
            select step, kind, item_id, was, back_to, was_version
            from desk_undo_item
            where run_id = :run
              and (not :restoring and done_at is null
                or :restoring and done_at is not null and skipped is null
                  and restored_at is null)
            order by position limit 1 for update skip locked
            """,
            Due.class)
        .setParameter("run", run)
        .setParameter("restoring", restoring)
        .uniqueResultOptional();
  }

  /** Whether a step is left, even one that another node is at. */
  boolean left(UUID run, boolean restoring) {
    return db.createNativeQuery(
            """
            select exists (
              select 1 from desk_undo_item
              where run_id = :run
                and (not :restoring and done_at is null
                  or :restoring and done_at is not null and skipped is null
                    and restored_at is null))
            """,
            Boolean.class)
        .setParameter("run", run)
        .setParameter("restoring", restoring)
        .getSingleResult();
  }

  /**
   * @param version the text had before, or null
   * @param skipped why it could not be taken, or null
   */
  void done(UUID run, Due due, Integer version, String skipped, Instant now) {
    db.createNativeMutationQuery(
            """
            update desk_undo_item
            set done_at = coalesce(done_at, :now), was_version = coalesce(:version, was_version),
              skipped = :skipped
            where run_id = :run and step = :step and kind = :kind and item_id = :id
            """)
        .setParameter("now", now)
        .setParameter("version", version, Integer.class)
        .setParameter("skipped", skipped, String.class)
        .setParameter("run", run)
        .setParameter("step", due.code())
        .setParameter("kind", due.kind())
        .setParameter("id", due.id())
        .executeUpdate();
  }

  void restored(UUID run, Due due, Instant now) {
    db.createNativeMutationQuery(
            """
            update desk_undo_item set restored_at = :now
            where run_id = :run and step = :step and kind = :kind and item_id = :id
            """)
        .setParameter("now", now)
        .setParameter("run", run)
        .setParameter("step", due.code())
        .setParameter("kind", due.kind())
        .setParameter("id", due.id())
        .executeUpdate();
  }

  /**
   * Moves a run on; false where it was not in that state.
   *
   * @param restoredBy who takes it back, or null
   */
  boolean enter(UUID run, String from, String to, UUID restoredBy) {
    return db.createNativeMutationQuery(
                """
                update desk_undo set state = :to, restored_by = coalesce(:by, restored_by)
                where id = :run and state = :was
                """)
            .setParameter("to", to)
            .setParameter("by", restoredBy, UUID.class)
            .setParameter("run", run)
            .setParameter("was", from)
            .executeUpdate()
        > 0;
  }

  void setFlag(UUID id, String from, String to) {
    db.createNativeMutationQuery("update desk_flag set state = :to where id = :id and state = :was")
        .setParameter("to", to)
        .setParameter("id", id)
        .setParameter("was", from)
        .executeUpdate();
  }

  void setProposal(UUID id, String from, String to) {
    db.createNativeMutationQuery(
            "update desk_caution_proposal set state = :to where id = :id and state = :was")
        .setParameter("to", to)
        .setParameter("id", id)
        .setParameter("was", from)
        .executeUpdate();
  }

  /**
   * @param by who looked at it; null = nobody has
   */
  void setSeen(RuleCode rule, EntryRef ref, UUID by) {
    db.createNativeMutationQuery(
            """
            update desk_rule_note
            set state = case when cast(:by as uuid) is null then 'open' else 'seen' end,
              seen_by = cast(:by as uuid)
            where rule = :rule and entry_id = :entry and state in ('open', 'seen')
            """)
        .setParameter("by", by, UUID.class)
        .setParameter("rule", rule.code())
        .setParameter("entry", ref.id())
        .executeUpdate();
  }

  void setNote(RuleCode rule, EntryRef ref, String from, String to) {
    db.createNativeMutationQuery(
            """
            update desk_rule_note set state = :to
            where rule = :rule and entry_id = :entry and state = :was
            """)
        .setParameter("to", to)
        .setParameter("rule", rule.code())
        .setParameter("entry", ref.id())
        .setParameter("was", from)
        .executeUpdate();
  }
}
