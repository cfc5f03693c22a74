package club.emberwell.exchange;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import org.hibernate.Session;
import org.hibernate.query.MutationQuery;

/** Runs what the contributions to download and erasure say about a member's rows. */
@ApplicationScoped
class MemberRowsRepository {
  private static final int FETCH = 200;

  private final Session db;

  MemberRowsRepository(Session db) {
    this.db = db;
  }

  /**
   * The rows of a statement as JSON texts, read as they are asked for.
   *
   * @param select takes {@code :member}
   */
  Stream<String> json(String select, UUID member) {
    return db.createNativeQuery(
            "select cast(to_jsonb(t) as text) from (%s) t".formatted(select), String.class)
        .setParameter("member", member)
        .setFetchSize(FETCH)
        .getResultStream();
  }

  /** The ids a statement finds. */
  List<UUID> ids(String select, UUID member) {
    return db.createNativeQuery(select, UUID.class).setParameter("member", member).getResultList();
  }

  /** One picture; photos are read one by one, because together they may be large. */
  byte[] picture(UUID photo) {
    return db.createNativeQuery(
            """
            select picture from photo where id = :id
            """,
            byte[].class)
        .setParameter("id", photo)
        .getSingleResult();
  }

  /** The picture of one grid. */
  byte[] gridPicture(UUID grid) {
    return db.createNativeQuery(
            """
            select picture from grid_photo where grid_id = :grid
            """,
            byte[].class)
        .setParameter("grid", grid)
        .getSingleResult();
  }

  /**
   * Runs statements in their order.
   *
   * @param statements each ends with a semicolon and its line; may take {@code :member}
   */
  void run(String statements, UUID member) {
    for (String sql : statements.split(";\n")) {
      MutationQuery query = db.createNativeMutationQuery(sql);
      if (sql.contains(":member")) {
        query.setParameter("member", member);
      }
      query.executeUpdate();
    }
  }
}
