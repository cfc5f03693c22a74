package club.emberwell.exchange.bench;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;
import org.hibernate.Session;

/** Rows of copies that were sent and are looked at. */
@ApplicationScoped
class SentBenchRepository {
  private final Session db;

  SentBenchRepository(Session db) {
    this.db = db;
  }

  void begin(UUID member, UUID id, Instant at) {
    db.createNativeMutationQuery(
            """
            insert into sent_bench (member_id, id, sent_at) values (:member, :id, :at)""")
        .setParameter("member", member)
        .setParameter("id", id)
        .setParameter("at", at)
        .executeUpdate();
  }

  void add(UUID id, int part, byte[] bytes) {
    db.createNativeMutationQuery(
            """
            insert into sent_bench_part (sent_id, part, bytes) values (:id, :part, :bytes)""")
        .setParameter("id", id)
        .setParameter("part", part)
        .setParameter("bytes", bytes)
        .executeUpdate();
  }

  boolean isOf(UUID member, UUID id) {
    return db.createNativeQuery(
                """
                select count(*) from sent_bench where member_id = :member and id = :id""",
                Long.class)
            .setParameter("member", member)
            .setParameter("id", id)
            .getSingleResult()
        > 0;
  }

  Optional<byte[]> part(UUID id, int part) {
    return db.createNativeQuery(
            """
            select bytes from sent_bench_part where sent_id = :id and part = :part""",
            byte[].class)
        .setParameter("id", id)
        .setParameter("part", part)
        .uniqueResultOptional();
  }

  void forget(UUID member) {
    db.createNativeMutationQuery(
            """
            delete from sent_bench where member_id = :member""")
        .setParameter("member", member)
        .executeUpdate();
  }

  int forgetOlder(Instant than) {
    return db.createNativeMutationQuery(
            """
            delete from sent_bench where sent_at < :than""")
        .setParameter("than", than)
        .executeUpdate();
  }
}
