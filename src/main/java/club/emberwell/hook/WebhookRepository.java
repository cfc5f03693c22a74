package club.emberwell.hook;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.LockModeType;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.hibernate.Session;

/** Rows of webhooks. */
@ApplicationScoped
class WebhookRepository implements PanacheRepositoryBase<WebhookEntity, UUID> {
  private final Session db;

  WebhookRepository(Session db) {
    this.db = db;
  }

  /** All, beside who added them, in the order they were added. */
  List<Webhook> all() {
    return db.createQuery(
            """
            select w, m.handle from WebhookEntity w join Member m on m.id = w.memberId
            order by w.createdAt, w.id""",
            Object[].class)
        .getResultStream()
        .map(row -> ((WebhookEntity) row[0]).toWebhook((String) row[1]))
        .toList();
  }

  Optional<Webhook> named(UUID id) {
    return db.createQuery(
            """
            select w, m.handle from WebhookEntity w join Member m on m.id = w.memberId
            where w.id = :id""",
            Object[].class)
        .setParameter("id", id)
        .uniqueResultOptional()
        .map(row -> ((WebhookEntity) row[0]).toWebhook((String) row[1]));
  }

  Optional<WebhookEntity> locked(UUID id) {
    return findByIdOptional(id, LockModeType.PESSIMISTIC_WRITE);
  }

  /**
   * One that is on.
   *
   * @param waiting deliveries on their way to it
   */
  record Listening(UUID id, String[] events, Instant createdAt, long waiting) {}

  List<Listening> listening() {
    return db.createNativeQuery(
            """
            select w.id, w.events, w.created_at, (
              select count(*) from webhook_delivery d
              where d.webhook_id = w.id and d.state = 'waiting')
            from webhook w where w.state = 'on'""",
            Listening.class)
        .getResultList();
  }

  void leftOut(UUID id, long more) {
    db.createNativeMutationQuery("update webhook set left_out = left_out + :more where id = :id")
        .setParameter("more", more)
        .setParameter("id", id)
        .executeUpdate();
  }

  /**
   * Keeps others from ending deliveries of this webhook until the transaction is over: each of them
   * may go on to all that wait, and two would wait for each other.
   */
  void hold(UUID id) {
    db.createNativeQuery("select id from webhook where id = :id for no key update", UUID.class)
        .setParameter("id", id)
        .getResultList();
  }

  void arrived(UUID id) {
    db.createNativeMutationQuery(
            """
            update webhook set failing_since = null, arrived_at = now() where id = :id""")
        .setParameter("id", id)
        .executeUpdate();
  }

  /**
   * Notes that a delivery did not arrive; switches the webhook off where that goes on for too long.
   *
   * @return true where it was switched off just now
   */
  boolean missed(UUID id, Duration offAfter) {
    db.createNativeMutationQuery(
            "update webhook set failing_since = coalesce(failing_since, now()) where id = :id")
        .setParameter("id", id)
        .executeUpdate();
    return db.createNativeMutationQuery(
                """
                update webhook
                   set state = 'failed', version = version + 1, updated_at = now()
                 where id = :id and state = 'on'
                   and failing_since < now() - make_interval(secs => :age)""")
            .setParameter("id", id)
            .setParameter("age", (double) offAfter.toSeconds())
            .executeUpdate()
        == 1;
  }

  /** Whether it was switched off just now, because the other side said that it is gone. */
  boolean gone(UUID id) {
    return db.createNativeMutationQuery(
                """
                update webhook set state = 'gone', version = version + 1, updated_at = now()
                 where id = :id and state = 'on'""")
            .setParameter("id", id)
            .executeUpdate()
        == 1;
  }

  /** How many were switched off by themselves and wait for an owner. */
  int broken() {
    return (int) count("state in ?1", List.of(HookState.FAILED, HookState.GONE));
  }

  /** Replaced secrets whose time is over. */
  void forgetOldSecrets() {
    db.createNativeMutationQuery(
            """
            update webhook set old_secret = null, old_until = null where old_until < now()""")
        .executeUpdate();
  }
}
