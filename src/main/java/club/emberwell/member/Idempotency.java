package club.emberwell.member;

import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Tuple;
import jakarta.transaction.Transactional;
import java.security.MessageDigest;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import java.util.function.Supplier;

/**
 * Makes a repeated write harmless: the key and the answer are stored in the transaction of the
 * write itself, so there is either both or neither.
 *
 * <p>After the IETF draft "The Idempotency-Key HTTP Header Field" (draft 07): another payload under
 * the same key is refused, a write still running too, a finished one is answered again.
 */
@ApplicationScoped
public class Idempotency {
  /**
   * An answer as it was first given.
   *
   * @param location null where none was sent
   * @param etag null where none was sent
   * @param body the JSON text; null for none
   */
  public record Answer(int status, String location, String etag, String body) {}

  /** What came of a keyed write. */
  public sealed interface Result {}

  /** The answer; {@code replayed} when it was given before. */
  public record Answered(Answer answer, boolean replayed) implements Result {}

  /** The key was used for something else: 422. */
  public record OtherPayload() implements Result {}

  /** The same write is running on another connection: 409. */
  public record StillRunning() implements Result {}

  private final EntityManager db;
  private final MemberLimits limits;

  Idempotency(EntityManager db, MemberLimits limits) {
    this.db = db;
    this.limits = limits;
  }

  /**
   * Runs the write unless it ran before. When the write throws, nothing is kept and the key can be
   * used again.
   *
   * @param fingerprint SHA-256 of method, path and body
   */
  @Transactional
  public Result once(UUID member, String key, byte[] fingerprint, Supplier<Answer> write) {
    if (!lock(member, key)) {
      return new StillRunning();
    }
    List<?> earlier =
        db.createNativeQuery(
                "select fingerprint, status, location, etag, body from idempotency"
                    + " where member_id = :member and key = :key",
                Tuple.class)
            .setParameter("member", member)
            .setParameter("key", key)
            .getResultList();
    if (!earlier.isEmpty()) {
      return replay((Tuple) earlier.get(0), fingerprint);
    }
    Answer answer = write.get();
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
    return new Answered(answer, false);
  }

  /** Forgets old answers. */
  @Scheduled(every = "1h", delayed = "5m")
  @Transactional
  void sweep() {
    db.createNativeQuery("delete from idempotency where created_at < :old")
        .setParameter("old", Instant.now().minus(limits.idempotencyLife()))
        .executeUpdate();
  }

  /** Held to the end of the transaction and freed by the database should this process die. */
  private boolean lock(UUID member, String key) {
    return (Boolean)
        db.createNativeQuery(
                "select pg_try_advisory_xact_lock(hashtextextended(:name, 0))", Boolean.class)
            .setParameter("name", "idempotency " + member + " " + key)
            .getSingleResult();
  }

  private static Result replay(Tuple row, byte[] fingerprint) {
    if (!MessageDigest.isEqual((byte[]) row.get(0), fingerprint)) {
      return new OtherPayload();
    }
    Answer answer =
        new Answer(
            ((Number) row.get(1)).intValue(),
            (String) row.get(2),
            (String) row.get(3),
            (String) row.get(4));
    return new Answered(answer, true);
  }
}
