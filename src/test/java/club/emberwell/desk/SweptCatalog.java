package club.emberwell.desk;

import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.util.List;

/** Takes what tests added to the catalog out of it again: all tests share one database. */
@ApplicationScoped
public class SweptCatalog {
  private final EntityManager db;

  SweptCatalog(EntityManager db) {
    this.db = db;
  }

  /** Removes terms whose slug and cautions whose id begin like this. */
  public void sweep(String start) {
    List<String> statements =
        List.of(
            "delete from catalog_merge where loser like '%1$s%%'",
            "delete from synonym where term_id like '%%:%1$s%%'",
            "delete from term where slug like '%1$s%%'",
            "delete from caution where id like '%1$s%%'",
            // history cannot be deleted; the tests' own user may pass by its triggers
            "set local session_replication_role = replica",
            "delete from catalog_revision where subject_id like '%%:%1$s%%'"
                + " or subject_id like '%1$s%%'",
            "update catalog_state set version = version + 1");
    QuarkusTransaction.requiringNew()
        .run(
            () ->
                statements.forEach(
                    sql -> db.createNativeQuery(sql.formatted(start)).executeUpdate()));
  }
}
