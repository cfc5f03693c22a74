package club.emberwell.grid.photo;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.UUID;

/** Rows of photos of grids. */
@ApplicationScoped
class GridPhotoRepository implements PanacheRepositoryBase<GridPhotoEntity, UUID> {
  /** Bytes that all photos of a member's grids take. */
  long bytesOf(UUID member) {
    return getEntityManager()
        .createQuery(
            """
            select coalesce(sum(p.sizeBytes), 0)
            from GridPhotoEntity p join EntryEntity e on e.id = p.gridId
            where e.memberId = :member""",
            Long.class)
        .setParameter("member", member)
        .getSingleResult();
  }
}
