package club.emberwell.exchange.open;

import club.emberwell.bench.StoredJson;
import club.emberwell.entry.change.HistoryBegins;
import com.fasterxml.jackson.core.type.TypeReference;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;
import org.hibernate.Session;

/** The package for all nodes, and whose turn it is to make it. */
@ApplicationScoped
class DataPackageRepository {
  private final Session db;

  DataPackageRepository(Session db) {
    this.db = db;
  }

  /** The newest; empty where there is none. */
  Optional<DataPackage> newest() {
    return db.createNativeQuery(
            """
            select cast(described as text) from data_package order by made_at desc, id limit 1""",
            String.class)
        .uniqueResultOptional()
        .map(text -> StoredJson.read(text, new TypeReference<DataPackage>() {}));
  }

  /** The oldest transaction that may still change something; what older ones did is seen. */
  long seen() {
    return db.createNativeQuery(
            "select cast(cast(pg_snapshot_xmin(pg_current_snapshot()) as text) as bigint)",
            Long.class)
        .getSingleResult();
  }

  void add(DataPackage made, long seen) {
    db.createNativeMutationQuery(
            """
            insert into data_package (id, made_at, seen, described, size_bytes)
            values (:id, :at, cast(cast(:seen as text) as xid8), cast(:described as jsonb), :size)""")
        .setParameter("id", made.id())
        .setParameter("at", made.madeAt())
        .setParameter("seen", seen)
        .setParameter("described", StoredJson.write(made))
        .setParameter("size", made.zip().bytes())
        .executeUpdate();
  }

  void addPart(UUID id, int position, byte[] bytes) {
    db.createNativeMutationQuery(
            """
            insert into data_package_part (package_id, position, bytes)
            values (:id, :position, :bytes)""")
        .setParameter("id", id)
        .setParameter("position", position)
        .setParameter("bytes", bytes)
        .executeUpdate();
  }

  /** Empty behind the last one, and where the package is gone. */
  Optional<byte[]> part(UUID id, int position) {
    return db.createNativeQuery(
            """
            select bytes from data_package_part where package_id = :id and position = :position""",
            byte[].class)
        .setParameter("id", id)
        .setParameter("position", position)
        .uniqueResultOptional();
  }

  /** What was taken back before and after a restore is looked for once more. */
  void lookAgain(@Observes HistoryBegins begins) {
    db.createNativeMutationQuery("update data_package set seen = '0'").executeUpdate();
  }

  /** Takes every package back but one; null = every one. */
  void deleteAllBut(UUID kept) {
    db.createNativeMutationQuery(
            """
            delete from data_package
            where cast(:kept as uuid) is null or id <> cast(:kept as uuid)""")
        .setParameter("kept", kept)
        .executeUpdate();
  }

  /**
   * Whether the newest package holds what must not be in it any more: something that was taken back
   * or hidden since, or somebody who left.
   */
  boolean isStale() {
    return db.createNativeQuery(
            """
            select exists (
              select 1 from (select * from data_package order by made_at desc, id limit 1) p
              where exists (
                  select 1 from change_row c join entry e on e.id = c.entity_id
                  where c.xid >= p.seen and e.kind = 'report' and e.created_at < p.made_at
                    and e.state in ('held', 'removed', 'withdrawn'))
                or exists (select 1 from erasure g where g.xid >= p.seen))""",
            Boolean.class)
        .getSingleResult();
  }

  /** Nothing older spoils the package: where much was looked at, it is not looked at again. */
  void lookedAtTo(long seen) {
    db.createNativeMutationQuery(
            """
            update data_package p set seen = cast(cast(:seen as text) as xid8)
            where exists (
              select 1 from change_row c where c.xid >= p.seen
              order by c.xid offset 1000 limit 1)""")
        .setParameter("seen", seen)
        .executeUpdate();
  }

  /** Whether there is anything to give. */
  boolean isAnythingLive() {
    return db.createNativeQuery(
            "select exists (select 1 from entry where kind = 'report' and state = 'live')",
            Boolean.class)
        .getSingleResult();
  }

  /** Somebody wants it made anew. */
  void ask() {
    db.createNativeMutationQuery("update data_making set asked_at = now()").executeUpdate();
  }

  /** Whether somebody wants it, and nobody has begun since. */
  boolean isAsked() {
    return db.createNativeQuery("select asked_at is not null from data_making", Boolean.class)
        .getSingleResult();
  }

  /** Takes the turn for so long at most; false while another node has it. */
  boolean claim(UUID maker, Duration most) {
    Instant now = Instant.now();
    return db.createNativeMutationQuery(
                """
                update data_making set maker = :maker, until = :until, asked_at = null
                where until is null or until < :now""")
            .setParameter("maker", maker)
            .setParameter("until", now.plus(most))
            .setParameter("now", now)
            .executeUpdate()
        == 1;
  }

  /** Gives the turn back, where it still is this one's. */
  boolean release(UUID maker) {
    return db.createNativeMutationQuery(
                "update data_making set maker = null, until = null where maker = :maker")
            .setParameter("maker", maker)
            .executeUpdate()
        == 1;
  }
}
