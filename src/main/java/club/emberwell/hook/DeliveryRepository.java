package club.emberwell.hook;

import club.emberwell.bench.StoredJson;
import club.emberwell.listing.Place;
import club.emberwell.remark.Coded;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.Tuple;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.hibernate.Session;

/** The outbox of webhooks. */
@ApplicationScoped
class DeliveryRepository {
  private final Session db;

  DeliveryRepository(Session db) {
    this.db = db;
  }

  /**
   * One on its way in.
   *
   * @param seq the change row; null for a test
   * @param entry what it is about, or null
   * @param shown whether it says what can be read, and is told only while it can
   */
  record New(
      UUID id, UUID webhook, String event, Long seq, UUID entry, boolean shown, String body) {}

  /** Adds what is not there yet, in one statement. */
  void add(List<New> all) {
    if (all.isEmpty()) {
      return;
    }
    db.createNativeMutationQuery(
            """
            insert into webhook_delivery
              (id, webhook_id, event, seq, entry_id, shown, body, state, due_at, created_at)
            select n.id, n.webhook, n.event, n.seq, n.entry, n.shown, n.body, 'waiting', now(), now()
            from jsonb_to_recordset(cast(:all as jsonb)) as n (id uuid, webhook uuid, event text,
              seq bigint, entry uuid, shown boolean, body text)
            on conflict (webhook_id, seq) do nothing""")
        .setParameter("all", StoredJson.write(all))
        .executeUpdate();
  }

  /**
   * One that this node may send until its lease is over.
   *
   * @param told whether what it says may still be told
   * @param secrets all that sign it, with a space between
   */
  record Claimed(
      long number,
      UUID id,
      UUID webhook,
      int tries,
      boolean told,
      String url,
      String secrets,
      String body) {}

  /**
   * Takes those that wait longest. Committed before they are sent: an open transaction would hold
   * up every node's index while another machine thinks.
   */
  List<Claimed> claim(int most, Duration lease) {
    return db.createNativeQuery(
            """
            update webhook_delivery d
               set tries = d.tries + 1, due_at = now() + make_interval(secs => :lease)
              from webhook w
             where w.id = d.webhook_id
               and d.number in (
                 select x.number from webhook_delivery x where x.state = 'waiting'
                    and x.due_at <= now()
                  order by x.due_at, x.number limit :most for update skip locked)
            returning d.number, d.id, d.webhook_id, d.tries,
              w.state = 'on' and (not d.shown or exists (
                select 1 from entry e where e.id = d.entry_id and e.state = 'live')),
              w.url, concat_ws(' ', w.secret, case when w.old_until > now() then w.old_secret end), d.body""",
            Claimed.class)
        .setParameter("lease", (double) lease.toSeconds())
        .setParameter("most", most)
        .getResultList();
  }

  void end(long number, Delivery.State state, Integer status, String error) {
    db.createNativeMutationQuery(
            """
            update webhook_delivery
               set state = :state, ended_at = now(), status = :status, error = :error
             where number = :number and state = 'waiting'""")
        .setParameter("state", state.code())
        .setParameter("status", status, Integer.class)
        .setParameter("error", error, String.class)
        .setParameter("number", number)
        .executeUpdate();
  }

  /** Tries again later, unless it waited too long already; false where it is given up. */
  boolean again(long number, Integer status, String error, Duration pause, Duration giveUpAfter) {
    return db.createNativeMutationQuery(
                """
                update webhook_delivery
                   set due_at = now() + make_interval(secs => :pause), status = :status,
                       error = :error
                 where number = :number and state = 'waiting'
                   and created_at > now() - make_interval(secs => :age)""")
            .setParameter("pause", (double) pause.toSeconds())
            .setParameter("age", (double) giveUpAfter.toSeconds())
            .setParameter("status", status, Integer.class)
            .setParameter("error", error, String.class)
            .setParameter("number", number)
            .executeUpdate()
        == 1;
  }

  /** Whatever else waits for a webhook that does not answer waits as well. */
  void holdBack(UUID webhook, Duration pause) {
    db.createNativeMutationQuery(
            """
            update webhook_delivery
               set due_at = greatest(due_at, now() + make_interval(secs => :pause))
             where webhook_id = :webhook and state = 'waiting'""")
        .setParameter("pause", (double) pause.toSeconds())
        .setParameter("webhook", webhook)
        .executeUpdate();
  }

  /** Whatever waits for a webhook that was switched off is not sent. */
  void drop(UUID webhook) {
    db.createNativeMutationQuery(
            """
            update webhook_delivery set state = 'dropped', ended_at = now()
             where webhook_id = :webhook and state = 'waiting'""")
        .setParameter("webhook", webhook)
        .executeUpdate();
  }

  void forget(Duration older) {
    db.createNativeMutationQuery(
            """
            delete from webhook_delivery where ended_at < now() - make_interval(secs => :age)""")
        .setParameter("age", (double) older.toSeconds())
        .executeUpdate();
  }

  /** Newest first. */
  List<Delivery> of(UUID webhook, Place place) {
    return db.createNativeQuery(
            """
            select number, id, event, created_at, state, tries, due_at, ended_at, status, error
            from webhook_delivery
            where webhook_id = :webhook and number < :before
            order by number desc offset :skip limit :most""",
            Tuple.class)
        .setParameter("webhook", webhook)
        .setParameter("before", place.number(0))
        .setParameter("skip", place.from())
        .setParameter("most", place.most())
        .getResultStream()
        .map(DeliveryRepository::delivery)
        .toList();
  }

  private static Delivery delivery(Tuple row) {
    Instant ended = row.get("ended_at", Instant.class);
    return new Delivery(
        row.get("number", Long.class),
        row.get("id", UUID.class),
        Coded.of(HookEvent.class, row.get("event", String.class)).orElseThrow(),
        row.get("created_at", Instant.class),
        new Delivery.Progress(
            Coded.of(Delivery.State.class, row.get("state", String.class)).orElseThrow(),
            row.get("tries", Integer.class),
            ended == null ? row.get("due_at", Instant.class) : null,
            ended,
            row.get("status", Integer.class),
            row.get("error", String.class)));
  }
}
