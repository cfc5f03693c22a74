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

  /** Whether the member proved lately, in this session, who they are. */
  boolean confirmedSince(UUID member, UUID session, Instant since) {
    return count("memberId = ?1 and id = ?2 and confirmedAt > ?3", member, session, since) > 0;
  }

  /** What the browser of a member's session calls itself; empty where it is none. */
  Optional<String> label(UUID member, UUID session) {
    return find("memberId = ?1 and id = ?2", member, session)
        .firstResultOptional()
        .map(found -> found.label);
  }

  /** Leaves the session a moment more under its old secret; false where it was replaced before. */
  boolean replace(byte[] hash, Instant end) {
    return update(
            "renew = false, replaced = true, expiresAt = ?1 where idHash = ?2 and renew = true",
            end,
            hash)
        == 1;
  }
}
