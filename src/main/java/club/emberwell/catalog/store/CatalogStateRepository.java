package club.emberwell.catalog.store;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;

/** The number that rises with every change of the catalog. */
@ApplicationScoped
class CatalogStateRepository {
  private final EntityManager entities;

  CatalogStateRepository(EntityManager entities) {
    this.entities = entities;
  }

  long version() {
    return number("select version from catalog_state");
  }

  /** Held until the transaction ends. */
  void lock() {
    number("select version from catalog_state for update");
  }

  /** Counts a change; answers the new version. */
  long countUp() {
    return number("update catalog_state set version = version + 1 returning version");
  }

  void flush() {
    entities.flush();
  }

  private long number(String sql) {
    return ((Number) entities.createNativeQuery(sql).getSingleResult()).longValue();
  }
}
