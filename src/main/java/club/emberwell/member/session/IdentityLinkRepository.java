package club.emberwell.member.session;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Optional;
import java.util.UUID;
import org.hibernate.Session;

/** Who members are at the sign-in provider. */
@ApplicationScoped
public class IdentityLinkRepository {
  private final Session db;

  IdentityLinkRepository(Session db) {
    this.db = db;
  }

  /** The member behind an issuer's subject. */
  public Optional<UUID> member(String issuer, String subject) {
    return db.createNativeQuery(
            """
            select member_id from identity_link where issuer = :issuer and subject = :subject
            """,
            UUID.class)
        .setParameter("issuer", issuer)
        .setParameter("subject", subject)
        .uniqueResultOptional();
  }

  /** Links a member; false where the subject is somebody's already. */
  public boolean add(String issuer, String subject, UUID member) {
    return db.createNativeMutationQuery(
                """
                insert into identity_link (issuer, subject, member_id)
                values (:issuer, :subject, :member)
                on conflict do nothing
                """)
            .setParameter("issuer", issuer)
            .setParameter("subject", subject)
            .setParameter("member", member)
            .executeUpdate()
        == 1;
  }

  /** Whether a member can sign in there. */
  public boolean linked(String issuer, UUID member) {
    return db.createNativeQuery(
            """
            select exists (select 1 from identity_link
                            where issuer = :issuer and member_id = :member)
            """,
            Boolean.class)
        .setParameter("issuer", issuer)
        .setParameter("member", member)
        .getSingleResult();
  }
}
