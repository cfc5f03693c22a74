package club.emberwell.talk.watch;

import club.emberwell.bench.StoredJson;
import club.emberwell.entry.Entry;
import club.emberwell.entry.EntryKind;
import club.emberwell.entry.EntryRef;
import club.emberwell.listing.Place;
import club.emberwell.remark.Coded;
import club.emberwell.report.ReportTitle;
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
  /** Finds h of a watch w with the entry e they lead to, as far as it is live, newest first. */
  private static final String FINDS =
      """
      select h.id as id, e.kind as kind, e.id as entry_id, e.parent_id as parent_id,
        coalesce(q.title, e.title) as title, r.process as process, r.source as source,
        m.id as author_id, m.handle as handle,
        w.id as kept_id, w.label as watch, h.found_at as found_at, h.read_at as read_at
      from watch_hit h
      left join watch w on w.id = h.watch_id
      join entry e on e.id = h.entry_id and e.state = 'live'
      left join entry q on q.id = e.parent_id
      left join report r on r.id = e.id
      join member m on m.id = e.member_id
      where %s
      order by h.id desc limit :most\
      """;

  /** Those of a member; found by two watches, shown once. */
  private static final String MINE =
      """
      h.member_id = :member and not exists (select 1 from watch_hit o
        where o.member_id = h.member_id and o.entry_id = h.entry_id and o.id < h.id)\
      """;

  private static final String INBOX =
      FINDS.formatted(MINE.concat(" and h.id < :before")).concat(" offset :skip");
  private static final String FOR_MAIL =
      FINDS.formatted(MINE.concat(" and h.mailed_at is null and w.mail"));
  private static final String FEED =
      """
      select k.id as watch_id, k.label as label, k.query as query, k.created_at as created_at, f.*
      from watch k
      join member owner on owner.id = k.member_id and owner.status = 'active'
      left join lateral (%s) f on true
      where k.feed_token = :token
      order by f.id desc\
      """
          .formatted(FINDS.formatted("h.watch_id = k.id"));

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
  record Hit(UUID member, UUID watch, UUID entry, boolean mail) {}

  /** Adds what is not there yet, dated by what was found: a stop of the server shifts no date. */
  void add(List<Hit> hits, Instant now) {
    if (hits.isEmpty()) {
      return;
    }
    db.createNativeMutationQuery(
            """
            insert into watch_hit (member_id, watch_id, entry_id, found_at, mailed_at)
            select n.member, n.watch, n.entry, e.updated_at,
              case when n.mail then null else cast(:now as timestamptz) end
            from jsonb_to_recordset(cast(:hits as jsonb))
              as n (member uuid, watch uuid, entry uuid, mail boolean)
            join entry e on e.id = n.entry
            order by e.updated_at
            on conflict do nothing\
            """)
        .setParameter("now", now)
        .setParameter("hits", StoredJson.write(hits))
        .executeUpdate();
  }

  /** One page of the inbox, newest first: one statement. */
  List<Find> inbox(UUID member, Place place) {
    return db.createNativeQuery(INBOX, Tuple.class)
        .setParameter("member", member)
        .setParameter("before", place.number(0))
        .setParameter("skip", place.from())
        .setParameter("most", place.most())
        .getResultStream()
        .map(WatchHitRepository::read)
        .toList();
  }

  /** How many are unread, counted no further than {@code most}. */
  int unread(UUID member, int most) {
    return db.createNativeQuery(
            """
            select count(*) from (
              select 1 from watch_hit h join entry e on e.id = h.entry_id and e.state = 'live'
              where h.member_id = :member and h.read_at is null
                and not exists (select 1 from watch_hit o
                  where o.member_id = h.member_id and o.entry_id = h.entry_id and o.id < h.id)
              limit :most) as unread\
            """,
            Long.class)
        .setParameter("member", member)
        .setParameter("most", most)
        .getSingleResult()
        .intValue();
  }

  /** The entry counts as read, whichever watches found it. */
  void markRead(UUID member, long id, Instant now) {
    db.createNativeMutationQuery(
            """
            update watch_hit set read_at = :now
             where member_id = :member and read_at is null and entry_id = (
               select o.entry_id from watch_hit o where o.id = :id and o.member_id = :member)\
            """)
        .setParameter("now", now)
        .setParameter("member", member)
        .setParameter("id", id)
        .executeUpdate();
  }

  /** These entries count as read, whichever watches found them. */
  void markSeen(UUID member, Collection<UUID> entries, Instant now) {
    db.createNativeMutationQuery(
            """
            update watch_hit set read_at = :now
             where member_id = :member and read_at is null and entry_id in (:entries)\
            """)
        .setParameter("now", now)
        .setParameter("member", member)
        .setParameterList("entries", entries)
        .executeUpdate();
  }

  /** Everything up to what was on the page that was looked at. */
  void markAllRead(UUID member, long upTo, Instant now) {
    db.createNativeMutationQuery(
            """
            update watch_hit set read_at = :now
             where member_id = :member and read_at is null and id <= :upTo\
            """)
        .setParameter("now", now)
        .setParameter("member", member)
        .setParameter("upTo", upTo)
        .executeUpdate();
  }

  /** What waits for a member's mail, newest first. */
  List<Find> forMail(UUID member, int most) {
    return db.createNativeQuery(FOR_MAIL, Tuple.class)
        .setParameter("member", member)
        .setParameter("most", most)
        .getResultStream()
        .map(WatchHitRepository::read)
        .toList();
  }

  /** The feed behind a token of an active member, newest first: one statement. */
  Optional<Feed> feed(String token, int most) {
    List<Tuple> rows =
        db.createNativeQuery(FEED, Tuple.class)
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
                        .filter(found -> found.get("id") != null)
                        .map(WatchHitRepository::read)
                        .toList()));
  }

  int deleteFoundBefore(Instant before) {
    return db.createNativeMutationQuery("delete from watch_hit where found_at < :before")
        .setParameter("before", before)
        .executeUpdate();
  }

  private static Find read(Tuple row) {
    EntryKind kind = Coded.of(EntryKind.class, row.get("kind", String.class)).orElseThrow();
    String title = row.get("title", String.class);
    UUID kept = row.get("kept_id", UUID.class);
    return new Find(
        ((Number) row.get("id")).longValue(),
        new EntryRef(kind, row.get("entry_id", UUID.class)),
        row.get("parent_id", UUID.class),
        kind == EntryKind.REPORT
            ? ReportTitle.of(
                title, row.get("process", String.class), row.get("source", String.class))
            : title,
        new Entry.Author(row.get("author_id", UUID.class), row.get("handle", String.class)),
        kept == null ? null : new Find.Kept(kept, row.get("watch", String.class)),
        row.get("found_at", Instant.class),
        row.get("read_at") != null);
  }
}
