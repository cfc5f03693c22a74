package club.emberwell.member.pace;

import club.emberwell.member.MemberLimits;
import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.security.MessageDigest;
import java.time.Instant;
import java.util.Optional;
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

  private final KeyedWriteRepository rows;

  Idempotency(KeyedWriteRepository rows) {
    this.rows = rows;
  }

  /**
   * Runs the write unless it ran before. When the write throws, nothing is kept and the key can be
   * used again.
   *
   * @param fingerprint SHA-256 of method, path and body
   */
  @Transactional
  public Result once(UUID member, String key, byte[] fingerprint, Supplier<Answer> write) {
    // held to the end of the transaction, freed by the database should this process die
    if (!rows.tryLock(member, key)) {
      return new StillRunning();
    }
    Optional<KeyedWriteRepository.Kept> earlier = rows.find(member, key);
    if (earlier.isPresent()) {
      return MessageDigest.isEqual(earlier.get().fingerprint(), fingerprint)
          ? new Answered(earlier.get().answer(), true)
          : new OtherPayload();
    }
    Answer answer = write.get();
    rows.keep(member, key, fingerprint, answer);
    return new Answered(answer, false);
  }

  /** Forgets old answers. */
  @Scheduled(every = "1h", delayed = "5m")
  @Transactional
  void sweep() {
    rows.deleteBefore(Instant.now().minus(MemberLimits.WRITE_KEY_LIFE));
  }
}
