package club.emberwell.member.club;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import java.util.stream.Collectors;
import org.hibernate.Session;

/** The rows behind {@link ClubOptions}: one text per key. */
@ApplicationScoped
class ClubOptionRepository {
  private final Session db;

  ClubOptionRepository(Session db) {
    this.db = db;
  }

  private record Option(String key, String value) {}

  /** All values, by key. */
  Map<String, String> all() {
    return db.createNativeQuery(
            """
            select key, value from club_option
            """,
            Option.class)
        .getResultStream()
        .collect(Collectors.toUnmodifiableMap(Option::key, Option::value));
  }

  /** Sets a value, whatever was there. */
  void replace(String key, String value) {
    db.createNativeMutationQuery(
            """
            insert into club_option (key, value) values (:key, :value)
            on conflict (key) do update set value = excluded.value
            """)
        .setParameter("key", key)
        .setParameter("value", value)
        .executeUpdate();
  }

  /** Sets a value unless one is there. */
  void add(String key, String value) {
    db.createNativeMutationQuery(
            """
            insert into club_option (key, value) values (:key, :value) on conflict do nothing
            """)
        .setParameter("key", key)
        .setParameter("value", value)
        .executeUpdate();
  }

  /** Counts a version up from the one that was read; false when it is another by now. */
  boolean advance(String key, long from) {
    return db.createNativeMutationQuery(
                """
                update club_option set value = :next where key = :key and value = :from
                """)
            .setParameter("key", key)
            .setParameter("next", Long.toString(from + 1))
            .setParameter("from", Long.toString(from))
            .executeUpdate()
        == 1;
  }
}
