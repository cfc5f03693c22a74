package club.emberwell.member.door;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;

@ApplicationScoped
class InvitationRepository implements PanacheRepositoryBase<Invitation, UUID> {
  Optional<Invitation> byCode(byte[] hash) {
    return find("codeHash", hash).firstResultOptional();
  }

  /** Takes one use in a single statement, so that parallel guests cannot pass on one ticket. */
  boolean take(UUID id, Instant now) {
    return update(
            """
            used = used + 1
            where id = ?1 and revokedAt is null and expiresAt > ?2 and used < most\
            """,
            id,
            now)
        == 1;
  }
}
