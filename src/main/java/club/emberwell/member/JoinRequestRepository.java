package club.emberwell.member;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

@ApplicationScoped
class JoinRequestRepository implements PanacheRepositoryBase<JoinRequest, UUID> {
  /** Those nobody has answered, oldest first. */
  List<JoinRequest> waiting(int most) {
    return find("decidedAt is null order by askedAt").page(0, most).list();
  }

  /** Why somebody was turned away; empty while nobody has answered. */
  Optional<String> refusal(UUID member) {
    return find("memberId = ?1 and accepted = false", member)
        .firstResultOptional()
        .map(request -> request.reason);
  }
}
