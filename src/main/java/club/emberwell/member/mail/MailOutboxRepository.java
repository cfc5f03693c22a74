package club.emberwell.member.mail;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Duration;
import java.util.Optional;
import java.util.UUID;
import org.hibernate.Session;

/** The rows behind {@link MailOutbox}. */
@ApplicationScoped
class MailOutboxRepository {
  /** A letter that this node may send until its lease is over. */
  record Letter(
      long id, String recipient, String subject, String body, String unsubscribe, int tries) {}

  /**
   * A letter on its way in.
   *
   * @param unsubscribe where its receiver ends such letters; or null
   */
  record Queued(
      UUID member,
      String recipient,
      String kind,
      String subject,
      String body,
      String unsubscribe) {}

  /** How many wait and how many were given up. */
  record Counts(long waiting, long failed) {}

  private final Session db;

  MailOutboxRepository(Session db) {
    this.db = db;
  }

  void add(Queued letter) {
    db.createNativeMutationQuery(
            """
            insert into mail_outbox
              (member_id, recipient, kind, subject, body, unsubscribe, due_at)
            values (:member, :recipient, :kind, :subject, :body, cast(:unsubscribe as text), now())
            """)
        .setParameter("member", letter.member())
        .setParameter("recipient", letter.recipient())
        .setParameter("kind", letter.kind())
        .setParameter("subject", letter.subject())
        .setParameter("body", letter.body())
        .setParameter("unsubscribe", letter.unsubscribe(), String.class)
        .executeUpdate();
  }

  /** Takes back what was not sent yet. */
  void drop(UUID member, String kind) {
    db.createNativeMutationQuery(
            """
            delete from mail_outbox where member_id = :member and kind = :kind
            """)
        .setParameter("member", member)
        .setParameter("kind", kind)
        .executeUpdate();
  }

  /**
   * Takes the letter that waits longest. Committed before it is sent: an open transaction would
   * hold up every node's index while a mail server thinks.
   */
  Optional<Letter> claim(Duration lease) {
    return db.createNativeQuery(
            """
            update mail_outbox
               set tries = tries + 1, due_at = now() + make_interval(secs => :lease)
             where id = (select id from mail_outbox where failed_at is null and due_at <= now()
                          order by due_at, id limit 1 for update skip locked)
            returning id, recipient, subject, body, unsubscribe, tries
            """,
            Letter.class)
        .setParameter("lease", (double) lease.toSeconds())
        .uniqueResultOptional();
  }

  void sent(long id) {
    db.createNativeMutationQuery(
            """
            delete from mail_outbox where id = :id
            """)
        .setParameter("id", id)
        .executeUpdate();
  }

  void again(long id, String error, Duration pause) {
    db.createNativeMutationQuery(
            """
            update mail_outbox
               set last_error = :error, due_at = now() + make_interval(secs => :pause)
             where id = :id
            """)
        .setParameter("id", id)
        .setParameter("error", error)
        .setParameter("pause", (double) pause.toSeconds())
        .executeUpdate();
  }

  void giveUp(long id, String error) {
    db.createNativeMutationQuery(
            """
            update mail_outbox set last_error = :error, failed_at = now() where id = :id
            """)
        .setParameter("id", id)
        .setParameter("error", error)
        .executeUpdate();
  }

  void forgetFailed(Duration older) {
    db.createNativeMutationQuery(
            """
            delete from mail_outbox where failed_at < now() - make_interval(secs => :age)
            """)
        .setParameter("age", (double) older.toSeconds())
        .executeUpdate();
  }

  Counts counts() {
    return db.createNativeQuery(
            """
            select count(*) filter (where failed_at is null) as waiting,
                   count(*) filter (where failed_at is not null) as failed
              from mail_outbox
            """,
            Counts.class)
        .getSingleResult();
  }
}
