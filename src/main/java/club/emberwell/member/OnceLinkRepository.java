package club.emberwell.member;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Tuple;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Links that work once, by the SHA-256 of their secret. */
@ApplicationScoped
class OnceLinkRepository {
  /** What a link does. */
  enum Kind {
    CONFIRM,
    RESET;

    String code() {
      return this == CONFIRM ? "confirm" : "reset";
    }
  }

  /**
   * Whom a link is for.
   *
   * @param email the address it was sent to; null for one handed over otherwise
   */
  record Link(UUID member, String email) {}

  private final EntityManager db;

  OnceLinkRepository(EntityManager db) {
    this.db = db;
  }

  /** Adds a link; earlier ones of the kind end. */
  void replace(Kind kind, UUID member, String email, byte[] hash, Duration life) {
    end(kind, member);
    db.createNativeQuery(
            "insert into once_link (secret_hash, kind, member_id, email, created_at, expires_at)"
                + " values (:hash, :kind, :member, cast(:email as text), now(),"
                + " now() + make_interval(secs => :life))")
        .setParameter("hash", hash)
        .setParameter("kind", kind.code())
        .setParameter("member", member)
        .setParameter("email", email)
        .setParameter("life", (double) life.toSeconds())
        .executeUpdate();
  }

  Optional<Link> find(Kind kind, byte[] hash) {
    return first(
        db.createNativeQuery(
                "select member_id, email from once_link"
                    + " where secret_hash = :hash and kind = :kind and expires_at > now()",
                Tuple.class)
            .setParameter("hash", hash)
            .setParameter("kind", kind.code())
            .getResultList());
  }

  /** Uses a link up. */
  Optional<Link> take(Kind kind, byte[] hash) {
    return first(
        db.createNativeQuery(
                "delete from once_link where secret_hash = :hash and kind = :kind"
                    + " and expires_at > now() returning member_id, email",
                Tuple.class)
            .setParameter("hash", hash)
            .setParameter("kind", kind.code())
            .getResultList());
  }

  void end(Kind kind, UUID member) {
    db.createNativeQuery("delete from once_link where member_id = :member and kind = :kind")
        .setParameter("member", member)
        .setParameter("kind", kind.code())
        .executeUpdate();
  }

  void sweep() {
    db.createNativeQuery("delete from once_link where expires_at < now()").executeUpdate();
  }

  private static Optional<Link> first(List<?> rows) {
    return rows.stream()
        .findFirst()
        .map(row -> new Link((UUID) ((Tuple) row).get(0), (String) ((Tuple) row).get(1)));
  }
}
