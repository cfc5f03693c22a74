package club.emberwell.member;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Who members are at the sign-in provider. */
@ApplicationScoped
class IdentityLinkRepository {
  private final EntityManager db;

  IdentityLinkRepository(EntityManager db) {
    this.db = db;
  }

  /** The member behind an issuer's subject, seen just now. */
  Optional<UUID> seen(String issuer, String subject) {
    List<?> rows =
        db.createNativeQuery(
                "update identity_link set last_used = now()"
                    + " where issuer = :issuer and subject = :subject returning member_id",
                UUID.class)
            .setParameter("issuer", issuer)
            .setParameter("subject", subject)
            .getResultList();
    return rows.stream().findFirst().map(UUID.class::cast);
  }

  /** Links a member; false where the subject is somebody's already. */
  boolean add(String issuer, String subject, UUID member) {
    return db.createNativeQuery(
                "insert into identity_link (issuer, subject, member_id, created_at, last_used)"
                    + " values (:issuer, :subject, :member, now(), now())"
                    + " on conflict do nothing")
            .setParameter("issuer", issuer)
            .setParameter("subject", subject)
            .setParameter("member", member)
            .executeUpdate()
        == 1;
  }

  boolean linked(String issuer, UUID member) {
    return !db.createNativeQuery(
            "select 1 from identity_link where issuer = :issuer and member_id = :member")
        .setParameter("issuer", issuer)
        .setParameter("member", member)
        .getResultList()
        .isEmpty();
  }
}
