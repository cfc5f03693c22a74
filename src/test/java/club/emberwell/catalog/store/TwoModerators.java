package club.emberwell.catalog.store;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.UUID;

/** Two members for tests that change the catalog. */
@ApplicationScoped
public class TwoModerators {
  static final UUID ONE = UUID.fromString("00000000-0000-4000-8000-000000000001");
  static final UUID TWO = UUID.fromString("00000000-0000-4000-8000-000000000002");

  private final EntityManager db;

  TwoModerators(EntityManager db) {
    this.db = db;
  }

  @Transactional
  public void join() {
    for (UUID id : List.of(ONE, TWO)) {
      db.createNativeQuery(
              """
              insert into member (id, handle, role, status)
              values (:id, :handle, 'moderator', 'active') on conflict do nothing
              """)
          .setParameter("id", id)
          .setParameter("handle", "catalog-" + id.toString().charAt(35))
          .executeUpdate();
    }
  }
}
