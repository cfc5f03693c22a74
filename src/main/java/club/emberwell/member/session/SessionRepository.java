package club.emberwell.member.session;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;

@ApplicationScoped
class SessionRepository implements PanacheRepositoryBase<MemberSession, byte[]> {
  /** Why somebody was turned away at the door; empty while nobody has answered. */
  Optional<String> refusal(UUID member) {
    return getEntityManager()
        .createQuery(
            """
            select r.reason from JoinRequest r where r.memberId = ?1 and r.accepted = false
            """,
            String.class)
        .setParameter(1, member)
        .getResultStream()
        .findFirst();
  }

  /** Whether a session of the member began lately. */
  boolean begunSince(UUID member, UUID session, Instant since) {
    return count("memberId = ?1 and id = ?2 and createdAt > ?3", member, session, since) > 0;
  }
}
