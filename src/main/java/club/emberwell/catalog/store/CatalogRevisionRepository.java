package club.emberwell.catalog.store;

import club.emberwell.listing.Place;
import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;

@ApplicationScoped
class CatalogRevisionRepository implements PanacheRepositoryBase<CatalogRevisionEntity, Long> {
  /** What happened to a subject, newest first. */
  List<CatalogRevisionEntity> of(String subject, String id, Place place) {
    return find(
            "subject = ?1 and subjectId = ?2 and seq < ?3 order by seq desc",
            subject,
            id,
            place.number(0))
        .range(place.from(), place.to())
        .list();
  }
}
