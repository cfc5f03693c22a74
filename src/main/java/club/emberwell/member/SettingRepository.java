package club.emberwell.member;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** The rows behind {@link ClubSettings}: one JSON value per key. */
@ApplicationScoped
class SettingRepository {
  private final EntityManager db;

  SettingRepository(EntityManager db) {
    this.db = db;
  }

  /** All values as text, by key. */
  Map<String, String> all() {
    List<?> rows =
        db.createNativeQuery("select key, value #>> '{}' from setting", Object[].class)
            .getResultList();
    Map<String, String> values = new HashMap<>();
    for (Object row : rows) {
      Object[] columns = (Object[]) row;
      values.put((String) columns[0], (String) columns[1]);
    }
    return Map.copyOf(values);
  }

  /** Sets a value, whatever was there. */
  void replace(String key, String json) {
    write(key, json, "do update set value = excluded.value");
  }

  /** Sets a value unless one is there. */
  void add(String key, String json) {
    write(key, json, "do nothing");
  }

  /** Counts a version up from the one that was read; false when it is another by now. */
  boolean advance(String key, long from) {
    return db.createNativeQuery(
                "update setting set value = to_jsonb(cast(:next as text))"
                    + " where key = :key and value #>> '{}' = :from")
            .setParameter("key", key)
            .setParameter("next", Long.toString(from + 1))
            .setParameter("from", Long.toString(from))
            .executeUpdate()
        == 1;
  }

  private void write(String key, String json, String onConflict) {
    db.createNativeQuery(
            "insert into setting (key, value) values (:key, cast(:value as jsonb))"
                + " on conflict (key) "
                + onConflict)
        .setParameter("key", key)
        .setParameter("value", json)
        .executeUpdate();
  }
}
