package club.emberwell.member.pace;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;
import org.hibernate.Session;

/** The rows behind {@link Idempotency}: the answers that keyed writes were given. */
@ApplicationScoped
class KeyedWriteRepository {
  /** What is kept of one keyed write. */
  record Kept(byte[] fingerprint, int status, String location, String etag, String body) {
    Idempotency.Answer answer() {
      return new Idempotency.Answer(status, location, etag, body);
    }
  }

  private final Session db;

  KeyedWriteRepository(Session db) {
    this.db = db;
  }

  Optional<Kept> find(UUID member, String key) {
    return db.createNativeQuery(
            """
            select fingerprint, status, location, etag, body
              from idempotency where member_id = :member and key = :key
            """,
            Kept.class)
        .setParameter("member", member)
        .setParameter("key", key)
        .uniqueResultOptional();
  }

  void keep(UUID member, String key, byte[] fingerprint, Idempotency.Answer answer) {
    db.createNativeMutationQuery(
            """
            insert into idempotency (member_id, key, fingerprint, status, location, etag, body)
            values (:member, :key, :fingerprint, :status, cast(:location as text),
                    cast(:etag as text), cast(:body as text))
            """)
        .setParameter("member", member)
        .setParameter("key", key)
        .setParameter("fingerprint", fingerprint)
        .setParameter("status", answer.status())
        .setParameter("location", answer.location(), String.class)
        .setParameter("etag", answer.etag(), String.class)
        .setParameter("body", answer.body(), String.class)
        .executeUpdate();
  }

  void deleteBefore(Instant old) {
    db.createNativeMutationQuery(
            """
            delete from idempotency where created_at < :old
            """)
        .setParameter("old", old)
        .executeUpdate();
  }

  /** Takes the key for this transaction; false while another holds it. */
  boolean tryLock(UUID member, String key) {
    return db.createNativeQuery(
            """
            select pg_try_advisory_xact_lock(hashtextextended(:name, 0))
            """,
            Boolean.class)
        .setParameter("name", "idempotency %s %s".formatted(member, key))
        .getSingleResult();
  }
}
