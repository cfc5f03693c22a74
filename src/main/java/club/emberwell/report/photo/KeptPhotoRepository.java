package club.emberwell.report.photo;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.Collection;
import java.util.List;
import java.util.UUID;

/** Rows of photos that only their owners see. */
@ApplicationScoped
class KeptPhotoRepository implements PanacheRepositoryBase<KeptPhotoEntity, UUID> {
  /** Those of several entries, without their bytes: one statement. */
  List<KeptPhotos.Kept> of(Collection<UUID> entries) {
    return getEntityManager()
        .createQuery(
            """
            select new club.emberwell.report.photo.KeptPhotos$Kept(p.entryId, p.width, p.height)
            from KeptPhotoEntity p
            where p.entryId in :entries""",
            KeptPhotos.Kept.class)
        .setParameter("entries", entries)
        .getResultList();
  }
}
