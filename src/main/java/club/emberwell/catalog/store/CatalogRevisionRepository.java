package club.emberwell.catalog.store;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;

@ApplicationScoped
class CatalogRevisionRepository implements PanacheRepositoryBase<CatalogRevisionEntity, Long> {
  /** What happened to a subject, newest first. */
  List<CatalogRevisionEntity> of(String subject, String id, int from, int most) {
    return find("subject = ?1 and subjectId = ?2 order by seq desc", subject, id)
        .range(from, from + most - 1)
        .list();
  }
}
