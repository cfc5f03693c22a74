package club.emberwell.member;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Duration;

/** The one row that can make a first owner. */
@ApplicationScoped
class OwnerCodeRepository {
  private final EntityManager db;

  OwnerCodeRepository(EntityManager db) {
    this.db = db;
  }

  void replace(byte[] hash, Duration life) {
    db.createNativeQuery(
            "insert into owner_code (code_hash, expires_at)"
                + " values (:hash, now() + make_interval(secs => :life))"
                + " on conflict (only_row) do update set code_hash = excluded.code_hash,"
                + " expires_at = excluded.expires_at")
        .setParameter("hash", hash)
        .setParameter("life", (double) life.toSeconds())
        .executeUpdate();
  }

  boolean fits(byte[] hash) {
    return !db.createNativeQuery(
            "select 1 from owner_code where code_hash = :hash and expires_at > now()")
        .setParameter("hash", hash)
        .getResultList()
        .isEmpty();
  }

  /** Uses the code up; false when it is none (any more). */
  boolean take(byte[] hash) {
    return db.createNativeQuery(
                "delete from owner_code where code_hash = :hash and expires_at > now()")
            .setParameter("hash", hash)
            .executeUpdate()
        == 1;
  }
}
