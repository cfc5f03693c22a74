package club.emberwell.keep;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;
import org.hibernate.Session;

/** Whose turn it is to make a backup, and what came of the last one: for all nodes together. */
@ApplicationScoped
class StoredMaking {
  private final Session db;

  StoredMaking(Session db) {
    this.db = db;
  }

  /** When the newest was made; empty: there is none yet. */
  Optional<Instant> madeAt() {
    return db.createNativeQuery(
            "select made_at from backup_making where made_at is not null", Instant.class)
        .uniqueResultOptional();
  }

  /** Why the last was not made; empty: it was. */
  Optional<String> failure() {
    return db.createNativeQuery(
            "select failure from backup_making where failure is not null", String.class)
        .uniqueResultOptional();
  }

  /** Takes the turn; false while it is somebody else's, or where one was made since then. */
  boolean claim(UUID maker, Instant due, Duration most) {
    Instant now = Instant.now();
    return db.createNativeMutationQuery(
                """
                update backup_making set maker = :maker, until = :until
                where (until is null or until < :now) and (made_at is null or made_at < :due)
                """)
            .setParameter("maker", maker)
            .setParameter("until", now.plus(most))
            .setParameter("now", now)
            .setParameter("due", due)
            .executeUpdate()
        == 1;
  }

  void done(UUID maker, Instant at, String file, long size) {
    db.createNativeMutationQuery(
            """
            update backup_making
               set made_at = :at, file = :file, size_bytes = :size, failure = null,
                   maker = null, until = null
             where maker = :maker
            """)
        .setParameter("at", at)
        .setParameter("file", file)
        .setParameter("size", size)
        .setParameter("maker", maker)
        .executeUpdate();
  }

  /** The turn stays taken for a pause. */
  void failed(UUID maker, String why, Duration pause) {
    db.createNativeMutationQuery(
            "update backup_making set failure = :why, until = :until where maker = :maker")
        .setParameter("why", why)
        .setParameter("until", Instant.now().plus(pause))
        .setParameter("maker", maker)
        .executeUpdate();
  }
}
