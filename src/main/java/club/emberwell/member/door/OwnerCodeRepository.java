package club.emberwell.member.door;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.hibernate.Session;

/** The one row that can make a first owner. */
@ApplicationScoped
class OwnerCodeRepository {
  private final Session db;

  OwnerCodeRepository(Session db) {
    this.db = db;
  }

  /** Of nodes that start at once, one makes the code and the others find it. */
  void holdOthersOff() {
    db.createNativeMutationQuery("lock table owner_code in share row exclusive mode")
        .executeUpdate();
  }

  /** Until when the code works; empty where none does. */
  Optional<Instant> until() {
    return db.createNativeQuery(
            """
            select expires_at from owner_code where expires_at > now()
            """,
            Instant.class)
        .uniqueResultOptional();
  }

  /** When a code ends that begins now, by the clock of the database. */
  Instant end(Duration life) {
    return db.createNativeQuery(
            """
            select now() + make_interval(secs => :life)
            """,
            Instant.class)
        .setParameter("life", (double) life.toSeconds())
        .getSingleResult();
  }

  void replace(byte[] hash, Instant until) {
    db.createNativeMutationQuery(
            """
            insert into owner_code (code_hash, expires_at) values (:hash, :until)
            on conflict (only_row) do update
              set code_hash = excluded.code_hash, expires_at = excluded.expires_at
            """)
        .setParameter("hash", hash)
        .setParameter("until", until)
        .executeUpdate();
  }

  boolean fits(byte[] hash) {
    return db.createNativeQuery(
            """
            select exists (select 1 from owner_code
                            where code_hash = :hash and expires_at > now())
            """,
            Boolean.class)
        .setParameter("hash", hash)
        .getSingleResult();
  }

  /** Uses the code up; false when it is none (any more). */
  boolean take(byte[] hash) {
    return db.createNativeMutationQuery(
                """
                delete from owner_code where code_hash = :hash and expires_at > now()
                """)
            .setParameter("hash", hash)
            .executeUpdate()
        == 1;
  }
}
