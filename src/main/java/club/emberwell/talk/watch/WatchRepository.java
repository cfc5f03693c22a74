package club.emberwell.talk.watch;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.LockModeType;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.hibernate.Session;

/** Rows of watches, and how far they have been served. */
@ApplicationScoped
class WatchRepository implements PanacheRepositoryBase<WatchEntity, UUID> {
  /** Which advisory lock the digest holds; a number of our own. */
  private static final long DIGEST_LOCK = 0x656d6265726469L;

  private final Session db;

  WatchRepository(Session db) {
    this.db = db;
  }

  List<WatchEntity> of(UUID member) {
    return list("memberId = ?1 order by createdAt, id", member);
  }

  Optional<WatchEntity> own(UUID id, UUID member) {
    return find("id = ?1 and memberId = ?2", id, member)
        .withLock(LockModeType.PESSIMISTIC_WRITE)
        .firstResultOptional();
  }

  /** The next watches of active members by id. */
  List<WatchEntity> activeAfter(UUID id, int most) {
    return db.createQuery(
            """
            select w from WatchEntity w join Member m on m.id = w.memberId
            where m.status = MemberStatus.ACTIVE and w.id > :id order by w.id\
            """,
            WatchEntity.class)
        .setParameter("id", id)
        .setMaxResults(most)
        .setReadOnly(true)
        .getResultList();
  }

  /** False while another node sends digests; else true until the transaction ends. */
  boolean claimDigest() {
    return db.createNativeQuery("select pg_try_advisory_xact_lock(:lock)", Boolean.class)
        .setParameter("lock", DIGEST_LOCK)
        .getSingleResult();
  }

  /** Members who wait for mail and got none since then. */
  List<UUID> digestsDue(Instant before, int most) {
    return db.createNativeQuery(
            """
            select distinct w.member_id
              from watch w
              join watch_hit h on h.watch_id = w.id and h.mailed_at is null
              join member m on m.id = w.member_id
              left join watch_digest d on d.member_id = w.member_id
             where w.mail and m.status = 'active' and m.email_confirmed_at is not null
               and (d.sent_at is null or d.sent_at <= :before)
             order by w.member_id limit :most\
            """,
            UUID.class)
        .setParameter("before", before)
        .setParameter("most", most)
        .getResultList();
  }

  /** Takes the mail off every watch of a member; what waited for a digest waits no longer. */
  void mailNone(UUID member, Instant at) {
    db.createNativeMutationQuery(
            """
            update watch set mail = false, version = version + 1
             where member_id = :member and mail\
            """)
        .setParameter("member", member)
        .executeUpdate();
    mailed(member, at);
  }

  void digestSent(UUID member, Instant at) {
    db.createNativeMutationQuery(
            """
            insert into watch_digest (member_id, sent_at) values (:member, :at)
            on conflict (member_id) do update set sent_at = excluded.sent_at\
            """)
        .setParameter("member", member)
        .setParameter("at", at)
        .executeUpdate();
    mailed(member, at);
  }

  private void mailed(UUID member, Instant at) {
    db.createNativeMutationQuery(
            """
            update watch_hit set mailed_at = :at
             where member_id = :member and mailed_at is null\
            """)
        .setParameter("member", member)
        .setParameter("at", at)
        .executeUpdate();
  }
}
