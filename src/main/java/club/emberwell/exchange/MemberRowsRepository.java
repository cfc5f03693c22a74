package club.emberwell.exchange;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Query;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;

/** Runs what the contributions to download and erasure say about a member's rows. */
@ApplicationScoped
class MemberRowsRepository {
  private static final int FETCH = 200;

  /** A file kept as bytes. */
  record Kept(UUID id, byte[] bytes) {}

  private final EntityManager db;

  MemberRowsRepository(EntityManager db) {
    this.db = db;
  }

  /**
   * The rows of a statement as JSON texts, read as they are asked for.
   *
   * @param select takes {@code :member}
   */
  Stream<String> json(String select, UUID member) {
    Stream<?> rows =
        db.createNativeQuery(
                "select cast(to_jsonb(t) as text) from (" + select + ") t", String.class)
            .setParameter("member", member)
            .setHint("org.hibernate.fetchSize", FETCH)
            .getResultStream();
    return rows.map(String.class::cast);
  }

  /** The ids a statement finds. */
  List<UUID> ids(String select, UUID member) {
    List<?> rows =
        db.createNativeQuery(select, UUID.class).setParameter("member", member).getResultList();
    return rows.stream().map(UUID.class::cast).toList();
  }

  /** One picture; photos are read one by one, because together they may be large. */
  byte[] picture(UUID photo) {
    return (byte[])
        db.createNativeQuery("select picture from photo where id = :id", byte[].class)
            .setParameter("id", photo)
            .getSingleResult();
  }

  /**
   * Runs statements in their order.
   *
   * @param statements may take {@code :member}
   */
  void run(List<String> statements, UUID member) {
    for (String sql : statements) {
      Query query = db.createNativeQuery(sql);
      if (sql.contains(":member")) {
        query.setParameter("member", member);
      }
      query.executeUpdate();
    }
  }
}
