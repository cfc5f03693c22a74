package club.emberwell.bench;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.UUID;

/** Rows of machines. */
@ApplicationScoped
class MachineRepository implements PanacheRepositoryBase<MachineEntity, UUID> {
  List<MachineEntity> keptBy(UUID memberId) {
    return list("memberId = ?1 and deletedAt is null order by number", memberId);
  }

  long countKeptBy(UUID memberId) {
    return count("memberId = ?1 and deletedAt is null", memberId);
  }
}
