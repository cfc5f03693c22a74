package club.emberwell.member.door;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Duration;
import org.hibernate.Session;

/** The one row that can make a first owner. */
@ApplicationScoped
class OwnerCodeRepository {
  private final Session db;

  OwnerCodeRepository(Session db) {
    this.db = db;
  }

  void replace(byte[] hash, Duration life) {
    db.createNativeMutationQuery(
            """
            insert into owner_code (code_hash, expires_at)
            values (:hash, now() + make_interval(secs => :life))
            on conflict (only_row) do update
              set code_hash = excluded.code_hash, expires_at = excluded.expires_at
            """)
        .setParameter("hash", hash)
        .setParameter("life", (double) life.toSeconds())
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
