package club.emberwell.report;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Rows of photos; the bytes are only read when a picture is served. */
@ApplicationScoped
class PhotoRepository implements PanacheRepositoryBase<PhotoEntity, UUID> {
  List<Photo> of(UUID report) {
    return getEntityManager()
        .createQuery(
            "select new club.emberwell.report.Photo(p.id, p.reportId, p.width, p.height,"
                + " p.sizeBytes, p.createdAt) from PhotoEntity p where p.reportId = :report"
                + " and p.hiddenAt is null order by p.number",
            Photo.class)
        .setParameter("report", report)
        .getResultList();
  }

  Optional<byte[]> bytes(UUID report, UUID photo, boolean small) {
    return getEntityManager()
        .createQuery(
            "select "
                + (small ? "p.thumb" : "p.picture")
                + " from PhotoEntity p where p.id = :photo and p.reportId = :report"
                + " and p.hiddenAt is null",
            byte[].class)
        .setParameter("photo", photo)
        .setParameter("report", report)
        .getResultStream()
        .findFirst();
  }

  long bytesOf(UUID member) {
    return getEntityManager()
        .createQuery(
            "select coalesce(sum(p.sizeBytes), 0) from PhotoEntity p where p.memberId = :member",
            Long.class)
        .setParameter("member", member)
        .getSingleResult();
  }

  boolean remove(UUID report, UUID photo) {
    return delete("id = ?1 and reportId = ?2", photo, report) > 0;
  }
}
