package club.emberwell.talk;

import club.emberwell.bench.StoredJson;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.Tuple;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.hibernate.Session;

/** Rows of what watches found. What is no longer live stays out of every list. */
@ApplicationScoped
class WatchHitRepository {
  private static final String COLUMNS =
      "h.id as id, h.entity as entity, h.entry_id as entry_id, h.found_at as found_at,"
          + " h.read_at as read_at, r.material_written as material,"
          + " r.coating_written as coating, r.colour_written as colour, r.process as process,"
          + " r.source as source, coalesce(t.title, q.title) as title,"
          + " t.question_id as question_id,"
          + " case when m.status = 'erased' then 'former member' else m.handle end as handle";

  private static final String JOINS =
      " left join report r on h.entity = 'report' and r.id = h.entry_id and r.state = 'LIVE'"
          + " left join talk_entry t on h.entity <> 'report' and t.id = h.entry_id"
          + " and t.state = 'LIVE'"
          + " left join talk_entry q on q.id = t.question_id"
          + " left join member m on m.id = coalesce(r.member_id, t.member_id)";

  private static final String IS_LIVE = "(r.id is not null or t.id is not null)";

  /** Found by two watches, shown once. */
  private static final String IS_FIRST =
      "not exists (select 1 from watch_hit o where o.member_id = h.member_id"
          + " and o.entry_id = h.entry_id and o.id < h.id)";

  private static final String ENTRY_OF =
      "entry_id = (select o.entry_id from watch_hit o where o.id = :id and o.member_id = :member)";

  private final Session db;

  WatchHitRepository(Session db) {
    this.db = db;
  }

  /**
   * A find on its way in.
   *
   * @param watch null for an answer to the member's own question
   * @param mail whether it waits for a digest
   */
  record Hit(UUID member, UUID watch, String entity, UUID entry, boolean mail) {}

  /** Adds what is not there yet, in one statement. */
  void add(List<Hit> hits, Instant now) {
    if (hits.isEmpty()) {
      return;
    }
    db.createNativeMutationQuery(
            "insert into watch_hit (member_id, watch_id, entity, entry_id, found_at, mailed_at)"
                + " select n.member, n.watch, n.entity, n.entry, :now,"
                + " case when n.mail then null else cast(:now as timestamptz) end"
                + " from jsonb_to_recordset(cast(:hits as jsonb))"
                + " as n(member uuid, watch uuid, entity text, entry uuid, mail boolean)"
                + " on conflict do nothing")
        .setParameter("now", now)
        .setParameter("hits", StoredJson.write(hits))
        .executeUpdate();
  }

  /** One page of the inbox, newest first: one statement. */
  List<Find> inbox(UUID member, int from, int most) {
    return db.createNativeQuery(
            "select "
                + COLUMNS
                + ", w.label as label from watch_hit h"
                + " left join watch w on w.id = h.watch_id"
                + JOINS
                + " where h.member_id = :member and "
                + IS_LIVE
                + " and "
                + IS_FIRST
                + " order by h.id desc offset :skip limit :most",
            Tuple.class)
        .setParameter("member", member)
        .setParameter("skip", from)
        .setParameter("most", most)
        .getResultStream()
        .map(WatchHitRepository::read)
        .toList();
  }

  /** How many are unread, counted no further than {@code most}. */
  int unread(UUID member, int most) {
    return db.createNativeQuery(
            "select count(*) from (select 1 from watch_hit h"
                + JOINS
                + " where h.member_id = :member and h.read_at is null and "
                + IS_LIVE
                + " and "
                + IS_FIRST
                + " limit :most) as unread",
            Long.class)
        .setParameter("member", member)
        .setParameter("most", most)
        .getSingleResult()
        .intValue();
  }

  /** The entry counts as read, whichever watches found it. */
  void markRead(UUID member, long id, Instant now) {
    db.createNativeMutationQuery(
            "update watch_hit set read_at = :now where member_id = :member and read_at is null"
                + " and "
                + ENTRY_OF)
        .setParameter("now", now)
        .setParameter("member", member)
        .setParameter("id", id)
        .executeUpdate();
  }

  /** These entries count as read, whichever watches found them. */
  void markSeen(UUID member, Collection<UUID> entries, Instant now) {
    db.createNativeMutationQuery(
            "update watch_hit set read_at = :now where member_id = :member and read_at is null"
                + " and entry_id in (:entries)")
        .setParameter("now", now)
        .setParameter("member", member)
        .setParameterList("entries", entries)
        .executeUpdate();
  }

  /** Everything up to what was on the page that was looked at. */
  void markAllRead(UUID member, long upTo, Instant now) {
    db.createNativeMutationQuery(
            "update watch_hit set read_at = :now where member_id = :member and read_at is null"
                + " and id <= :upTo")
        .setParameter("now", now)
        .setParameter("member", member)
        .setParameter("upTo", upTo)
        .executeUpdate();
  }

  /** What waits for a member's mail, newest first. */
  List<Find> forMail(UUID member, int most) {
    return db.createNativeQuery(
            "select "
                + COLUMNS
                + ", w.label as label from watch_hit h"
                + " join watch w on w.id = h.watch_id and w.mail"
                + JOINS
                + " where h.member_id = :member and h.mailed_at is null and "
                + IS_LIVE
                + " and "
                + IS_FIRST
                + " order by h.id desc limit :most",
            Tuple.class)
        .setParameter("member", member)
        .setParameter("most", most)
        .getResultStream()
        .map(WatchHitRepository::read)
        .toList();
  }

  /** The feed behind a token of an active member, newest first: one statement. */
  Optional<Feed> feed(String token, int most) {
    List<Tuple> rows =
        db.createNativeQuery(
                "select "
                    + COLUMNS
                    + ", w.label as label, w.id as watch_id, w.query as query,"
                    + " w.created_at as created_at"
                    + " from watch w join member owner on owner.id = w.member_id"
                    + " and owner.status = 'active'"
                    + " left join watch_hit h on h.watch_id = w.id"
                    + JOINS
                    + " where w.feed_token = :token order by h.id desc nulls last limit :most",
                Tuple.class)
            .setParameter("token", token)
            .setParameter("most", most)
            .getResultList();
    return rows.stream()
        .findFirst()
        .map(
            row ->
                new Feed(
                    row.get("watch_id", UUID.class),
                    row.get("label", String.class),
                    row.get("query", String.class),
                    row.get("created_at", Instant.class),
                    rows.stream()
                        .filter(WatchHitRepository::isLive)
                        .map(WatchHitRepository::read)
                        .toList()));
  }

  int deleteFoundBefore(Instant before) {
    return db.createNativeMutationQuery("delete from watch_hit where found_at < :before")
        .setParameter("before", before)
        .executeUpdate();
  }

  private static boolean isLive(Tuple row) {
    return row.get("handle") != null;
  }

  private static Find read(Tuple row) {
    String entity = row.get("entity", String.class);
    String title =
        entity.equals("report")
            ? Find.reportTitle(
                row.get("material", String.class),
                row.get("coating", String.class),
                row.get("colour", String.class),
                row.get("process", String.class),
                row.get("source", String.class))
            : row.get("title", String.class);
    return new Find(
        ((Number) row.get("id")).longValue(),
        entity,
        row.get("entry_id", UUID.class),
        title,
        row.get("label", String.class),
        row.get("handle", String.class),
        row.get("question_id", UUID.class),
        row.get("found_at", Instant.class),
        row.get("read_at") != null);
  }
}
