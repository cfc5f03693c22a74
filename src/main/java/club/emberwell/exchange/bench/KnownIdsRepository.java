package club.emberwell.exchange.bench;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Collection;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.hibernate.Session;

/** What ids are taken by on this server, whoever's they are. */
@ApplicationScoped
class KnownIdsRepository {
  private final Session db;

  KnownIdsRepository(Session db) {
    this.db = db;
  }

  /**
   * An id that is taken.
   *
   * @param kind of entry, or machine
   * @param state of an entry; a machine that was removed is withdrawn
   */
  record Known(UUID id, UUID member, String kind, String state) {
    boolean live() {
      return state.equals("live");
    }
  }

  /**
   * Writes what was stored and holds it no longer, as each write looks through all that is held.
   */
  void settle() {
    db.flush();
    db.clear();
  }

  /** Those of these that are taken: one statement. */
  Map<UUID, Known> of(Collection<UUID> ids) {
    return db.createNativeQuery(
            """
            select id, member_id, kind, state from entry where id in (:ids)
            union all
            select id, member_id, 'machine',
              case when deleted_at is null then 'live' else 'withdrawn' end
            from machine where id in (:ids)\
            """,
            Known.class)
        .setParameterList("ids", ids, UUID.class)
        .getResultStream()
        .collect(Collectors.toMap(Known::id, Function.identity()));
  }
}
