package club.emberwell.report.photo;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Rows of pictures of forms that are not stored yet. */
@ApplicationScoped
class ParkedRepository implements PanacheRepositoryBase<ParkedEntity, UUID> {
  /** Those of one form in their order, with their bytes. */
  List<ParkedEntity> whole(UUID member, UUID form) {
    return list("memberId = ?1 and formId = ?2 order by place, parkedAt", member, form);
  }

  /** The same without their bytes. */
  List<ParkedPhotos.Parked> of(UUID member, UUID form) {
    return getEntityManager()
        .createQuery(
            """
            select new club.emberwell.report.photo.ParkedPhotos$Parked(p.id,
              new club.emberwell.report.photo.PhotoWords(p.caption, p.alt),
              new club.emberwell.report.photo.Photo$Size(p.picture.width, p.picture.height))
            from ParkedEntity p
            where p.memberId = :member and p.formId = :form
            order by p.place, p.parkedAt""",
            ParkedPhotos.Parked.class)
        .setParameter("member", member)
        .setParameter("form", form)
        .getResultList();
  }

  Optional<ParkedEntity> own(UUID member, UUID id) {
    return find("memberId = ?1 and id = ?2", member, id).firstResultOptional();
  }

  long of(UUID member) {
    return count("memberId", member);
  }

  long deleteOlder(Instant than) {
    return delete("parkedAt < ?1", than);
  }
}
