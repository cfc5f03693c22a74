package club.emberwell.report.photo;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Rows of photos; the bytes are only read when a picture is served. */
@ApplicationScoped
public class PhotoRepository implements PanacheRepositoryBase<PhotoEntity, UUID> {
  /** Those in sight, in the order they were added. */
  public List<Photo> of(UUID report) {
    return getEntityManager()
        .createQuery(
            """
            select new club.emberwell.report.photo.Photo(
              e.id, e.parentId, p.width, p.height, p.sizeBytes, e.createdAt)
            from PhotoEntity p join p.entry e
            where e.parentId = :report and e.state = EntryState.LIVE
            order by e.number""",
            Photo.class)
        .setParameter("report", report)
        .getResultList();
  }

  Optional<byte[]> bytes(UUID report, UUID photo, boolean small) {
    return getEntityManager()
        .createQuery(
            """
            select case when :small = true then p.thumb else p.picture end
            from PhotoEntity p join p.entry e
            where e.id = :photo and e.parentId = :report and e.state = EntryState.LIVE""",
            byte[].class)
        .setParameter("small", small)
        .setParameter("photo", photo)
        .setParameter("report", report)
        .getResultStream()
        .findFirst();
  }

  long bytesOf(UUID member) {
    return getEntityManager()
        .createQuery(
            """
            select coalesce(sum(p.sizeBytes), 0)
            from PhotoEntity p join p.entry e
            where e.memberId = :member""",
            Long.class)
        .setParameter("member", member)
        .getSingleResult();
  }
}
