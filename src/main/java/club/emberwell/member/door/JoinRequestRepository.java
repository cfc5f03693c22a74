package club.emberwell.member.door;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.UUID;

@ApplicationScoped
public class JoinRequestRepository implements PanacheRepositoryBase<JoinRequest, UUID> {
  /** Those nobody has answered, oldest first. */
  List<JoinRequest> waiting(int most) {
    return find("decidedAt is null order by askedAt").page(0, most).list();
  }
}
