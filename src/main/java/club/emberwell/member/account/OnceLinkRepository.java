package club.emberwell.member.account;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Duration;
import java.util.Optional;
import java.util.UUID;
import org.hibernate.Session;

/** The rows behind {@link OnceLinks}, by the SHA-256 of their secrets. */
@ApplicationScoped
class OnceLinkRepository {
  private final Session db;

  OnceLinkRepository(Session db) {
    this.db = db;
  }

  void add(OnceLinks.Kind kind, OnceLinks.Link link, byte[] hash, Duration life) {
    db.createNativeMutationQuery(
            """
            insert into once_link (secret_hash, kind, member_id, email, created_at, expires_at)
            values (:hash, :kind, :member, cast(:email as text), now(),
                    now() + make_interval(secs => :life))
            """)
        .setParameter("hash", hash)
        .setParameter("kind", kind.code())
        .setParameter("member", link.member())
        .setParameter("email", link.email(), String.class)
        .setParameter("life", (double) life.toSeconds())
        .executeUpdate();
  }

  Optional<OnceLinks.Link> find(OnceLinks.Kind kind, byte[] hash) {
    return db.createNativeQuery(
            """
            select member_id, email
              from once_link where secret_hash = :hash and kind = :kind and expires_at > now()
            """,
            OnceLinks.Link.class)
        .setParameter("hash", hash)
        .setParameter("kind", kind.code())
        .uniqueResultOptional();
  }

  Optional<OnceLinks.Link> take(OnceLinks.Kind kind, byte[] hash) {
    return db.createNativeQuery(
            """
            delete from once_link
             where secret_hash = :hash and kind = :kind and expires_at > now()
            returning member_id, email
            """,
            OnceLinks.Link.class)
        .setParameter("hash", hash)
        .setParameter("kind", kind.code())
        .uniqueResultOptional();
  }

  void end(OnceLinks.Kind kind, UUID member) {
    db.createNativeMutationQuery(
            """
            delete from once_link where member_id = :member and kind = :kind
            """)
        .setParameter("member", member)
        .setParameter("kind", kind.code())
        .executeUpdate();
  }

  void sweep() {
    db.createNativeMutationQuery(
            """
            delete from once_link where expires_at < now()
            """)
        .executeUpdate();
  }
}
