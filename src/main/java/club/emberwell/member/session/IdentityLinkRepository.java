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

  /** The member behind an issuer's subject, seen just now. */
  public Optional<UUID> seen(String issuer, String subject) {
    return db.createNativeQuery(
            """
            update identity_link set last_used = now()
             where issuer = :issuer and subject = :subject
            returning member_id
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
                insert into identity_link (issuer, subject, member_id, created_at, last_used)
                values (:issuer, :subject, :member, now(), now())
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
