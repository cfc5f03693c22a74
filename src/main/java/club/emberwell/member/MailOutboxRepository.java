package club.emberwell.member;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Tuple;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** The rows behind {@link MailOutbox}. */
@ApplicationScoped
class MailOutboxRepository {
  /** A letter that this node may send until its lease is over. */
  record Letter(long id, String recipient, String subject, String body, int tries) {}

  private static final String CLAIM =
      """
      update mail_outbox set tries = tries + 1,
        due_at = now() + make_interval(secs => :lease)
      where id = (select id from mail_outbox where failed_at is null and due_at <= now()
                  order by due_at, id limit 1 for update skip locked)
      returning id, recipient, subject, body, tries
      """;

  private final EntityManager db;

  MailOutboxRepository(EntityManager db) {
    this.db = db;
  }

  void add(UUID member, String recipient, String kind, String subject, String body) {
    db.createNativeQuery(
            "insert into mail_outbox (member_id, recipient, kind, subject, body, queued_at, due_at)"
                + " values (:member, :recipient, :kind, :subject, :body, now(), now())")
        .setParameter("member", member)
        .setParameter("recipient", recipient)
        .setParameter("kind", kind)
        .setParameter("subject", subject)
        .setParameter("body", body)
        .executeUpdate();
  }

  /**
   * Takes the letter that waits longest. Committed before it is sent: an open transaction would
   * hold up every node's index while a mail server thinks.
   */
  Optional<Letter> claim(Duration lease) {
    List<?> rows =
        db.createNativeQuery(CLAIM, Tuple.class)
            .setParameter("lease", (double) lease.toSeconds())
            .getResultList();
    return rows.stream().findFirst().map(row -> letter((Tuple) row));
  }

  private static Letter letter(Tuple row) {
    return new Letter(
        ((Number) row.get(0)).longValue(),
        (String) row.get(1),
        (String) row.get(2),
        (String) row.get(3),
        ((Number) row.get(4)).intValue());
  }

  void sent(long id) {
    db.createNativeQuery("delete from mail_outbox where id = :id")
        .setParameter("id", id)
        .executeUpdate();
  }

  void again(long id, String error, Duration pause) {
    db.createNativeQuery(
            "update mail_outbox set last_error = :error,"
                + " due_at = now() + make_interval(secs => :pause) where id = :id")
        .setParameter("id", id)
        .setParameter("error", error)
        .setParameter("pause", (double) pause.toSeconds())
        .executeUpdate();
  }

  void giveUp(long id, String error) {
    db.createNativeQuery(
            "update mail_outbox set last_error = :error, failed_at = now() where id = :id")
        .setParameter("id", id)
        .setParameter("error", error)
        .executeUpdate();
  }

  void forgetFailed(Duration older) {
    db.createNativeQuery(
            "delete from mail_outbox where failed_at < now() - make_interval(secs => :age)")
        .setParameter("age", (double) older.toSeconds())
        .executeUpdate();
  }

  /** How many wait and how many were given up. */
  long[] counts() {
    Object[] row =
        (Object[])
            db.createNativeQuery(
                    "select count(*) filter (where failed_at is null),"
                        + " count(*) filter (where failed_at is not null) from mail_outbox",
                    Object[].class)
                .getSingleResult();
    return new long[] {((Number) row[0]).longValue(), ((Number) row[1]).longValue()};
  }
}
