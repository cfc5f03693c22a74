package club.emberwell.member;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Tuple;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** The rows behind {@link Idempotency}: the answers that keyed writes were given. */
@ApplicationScoped
class KeyedWriteRepository {
  /** What is kept of one keyed write. */
  record Kept(byte[] fingerprint, Idempotency.Answer answer) {}

  private final EntityManager db;

  KeyedWriteRepository(EntityManager db) {
    this.db = db;
  }

  Optional<Kept> find(UUID member, String key) {
    List<?> rows =
        db.createNativeQuery(
                "select fingerprint, status, location, etag, body from idempotency"
                    + " where member_id = :member and key = :key",
                Tuple.class)
            .setParameter("member", member)
            .setParameter("key", key)
            .getResultList();
    return rows.stream().findFirst().map(row -> kept((Tuple) row));
  }

  void keep(UUID member, String key, byte[] fingerprint, Idempotency.Answer answer) {
    db.createNativeQuery(
            "insert into idempotency (member_id, key, fingerprint, status, location, etag, body)"
                + " values (:member, :key, :fingerprint, :status, cast(:location as text),"
                + " cast(:etag as text), cast(:body as text))")
        .setParameter("member", member)
        .setParameter("key", key)
        .setParameter("fingerprint", fingerprint)
        .setParameter("status", answer.status())
        .setParameter("location", answer.location())
        .setParameter("etag", answer.etag())
        .setParameter("body", answer.body())
        .executeUpdate();
  }

  void deleteBefore(Instant old) {
    db.createNativeQuery("delete from idempotency where created_at < :old")
        .setParameter("old", old)
        .executeUpdate();
  }

  /** Takes the key for this transaction; false while another holds it. */
  boolean tryLock(UUID member, String key) {
    return (Boolean)
        db.createNativeQuery(
                "select pg_try_advisory_xact_lock(hashtextextended(:name, 0))", Boolean.class)
            .setParameter("name", "idempotency " + member + " " + key)
            .getSingleResult();
  }

  private static Kept kept(Tuple row) {
    return new Kept(
        (byte[]) row.get(0),
        new Idempotency.Answer(
            ((Number) row.get(1)).intValue(),
            (String) row.get(2),
            (String) row.get(3),
            (String) row.get(4)));
  }
}
