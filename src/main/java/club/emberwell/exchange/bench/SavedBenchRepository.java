package club.emberwell.exchange.bench;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.Collection;
import java.util.UUID;
import org.hibernate.Session;

/** Rows of when benches were saved, and when they changed. */
@ApplicationScoped
class SavedBenchRepository {
  private final Session db;

  SavedBenchRepository(Session db) {
    this.db = db;
  }

  void note(UUID member, Instant at) {
    db.createNativeMutationQuery(
            """
            insert into saved_bench (member_id, saved_at) values (:member, :at)
            on conflict (member_id) do update set saved_at = excluded.saved_at""")
        .setParameter("member", member)
        .setParameter("at", at)
        .executeUpdate();
  }

  /**
   * How a bench stands to its last copy.
   *
   * @param savedAt null = never
   * @param changedAt null = nothing was ever on it
   * @param things that lie on it
   */
  record Row(Instant savedAt, Instant changedAt, long things) {}

  /** Read by the indexes on the member of entries. */
  Row of(UUID member, Collection<String> kinds) {
    return db.createNativeQuery(
            """
            select (select saved_at from saved_bench where member_id = :member) as saved_at,
              greatest(e.changed_at, m.changed_at, p.changed_at, g.changed_at) as changed_at,
              e.things + m.things as things
            from (select max(updated_at) as changed_at, count(*) filter (where state = 'live') as things
                from entry where member_id = :member and kind in (:kinds)) e,
              (select max(updated_at) as changed_at,
                count(*) filter (where deleted_at is null) as things
                from machine where member_id = :member) m,
              (select max(taken_at) as changed_at from kept_photo k join entry o on o.id = k.entry_id
                where o.member_id = :member) p,
              (select max(taken_at) as changed_at from grid_photo k join entry o on o.id = k.grid_id
                where o.member_id = :member) g""",
            Row.class)
        .setParameter("member", member)
        .setParameterList("kinds", kinds)
        .getSingleResult();
  }
}
