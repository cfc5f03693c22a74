package club.emberwell.catalog;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;

@ApplicationScoped
class CatalogRevisionRepository implements PanacheRepositoryBase<CatalogRevisionEntity, Long> {}
