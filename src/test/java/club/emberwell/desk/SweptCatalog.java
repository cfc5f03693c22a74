package club.emberwell.desk;

import club.emberwell.catalog.store.CatalogChange;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Event;
import jakarta.persistence.EntityManager;
import java.util.List;
import java.util.Set;

/** Takes what tests added to the catalog out of it again: all tests share one database. */
@ApplicationScoped
public class SweptCatalog {
  private final EntityManager db;
  private final Event<CatalogChange> changes;

  SweptCatalog(EntityManager db, Event<CatalogChange> changes) {
    this.db = db;
    this.changes = changes;
  }

  /** Removes terms whose slug and cautions whose id begin like this. */
  public void sweep(String start) {
    List<String> statements =
        List.of(
            // terms are never deleted; the tests' own user may pass by what points to them
            "set local session_replication_role = replica",
            "update report set material = null where material like '%1$s%%'",
            "delete from catalog_merge where loser like '%1$s%%'",
            "delete from synonym where term_id like '%%:%1$s%%'",
            "delete from term where slug like '%1$s%%'",
            "delete from caution where id like '%1$s%%'",
            "delete from unfiled where filed_to like '%1$s%%'",
            "delete from catalog_revision where subject_id like '%%:%1$s%%'"
                + " or subject_id like '%1$s%%'",
            "update catalog_state set version = version + 1");
    QuarkusTransaction.requiringNew()
        .run(
            () -> {
              statements.forEach(sql -> db.createNativeQuery(sql.formatted(start)).executeUpdate());
              changes.fire(new CatalogChange(0, null, Set.of(), Set.of()));
            });
  }
}
