package club.emberwell.talk;

import club.emberwell.entry.EntryKind;
import club.emberwell.entry.EntryState;
import club.emberwell.listing.Place;
import club.emberwell.member.Actor;
import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.TypedQuery;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Rows of questions, answers, notices and comments. */
@ApplicationScoped
public class TalkRepository implements PanacheRepositoryBase<TalkEntity, UUID> {
  private static final String WITH_NAME =
      """
      select t, m.handle
      from TalkEntity t join fetch t.entry e join Member m on m.id = e.memberId
      where\s\
      """;

  private static final String SEEN_BELOW =
      """
      e.parentId = :above and (e.state = EntryState.LIVE or e.state <> EntryState.WITHDRAWN
        and (e.memberId = :reader or :moderates = true))
      """;

  /** One index serves this order, another one only what is unanswered. */
  private static final String LATEST =
      "e.state = EntryState.LIVE and t.kind = :kind order by t.activeAt desc, e.number desc";

  private static final String UNANSWERED = "t.answers = 0 and ".concat(LATEST);

  private static final String NEWEST =
      """
      e.state = EntryState.LIVE and t.kind = :kind and (e.createdAt, e.id) < (:at, :id)
      order by e.createdAt desc, e.id desc\
      """;

  private static final String UNANSWERED_NEWEST = "t.answers = 0 and ".concat(NEWEST);

  private static final String IN_ORDER =
      """
      and (case when e.id = :accepted then 0 else 1 end, e.createdAt, e.id) > (:first, :at, :id)
      order by case when e.id = :accepted then 0 else 1 end, e.createdAt, e.id\
      """;

  private static final String BEFORE =
      """
      select count(*) from EntryEntity e, EntryEntity a
      where a.id = :answer and a.parentId = e.parentId and a.kind = e.kind and a.id <> :accepted
        and (e.id = :accepted or e.createdAt < a.createdAt
          or e.createdAt = a.createdAt and e.id < a.id)
        and\s\
      """;

  private static final UUID NOBODY = new UUID(0, 0);

  /** With its entry. */
  Optional<TalkEntity> whole(UUID id) {
    return find("from TalkEntity t join fetch t.entry where t.id = ?1", id).firstResultOptional();
  }

  Optional<TalkEntry> named(UUID id) {
    return entries(query("e.id = :id").setParameter("id", id)).stream().findFirst();
  }

  /** In no particular order. */
  public List<TalkEntry> live(Collection<UUID> ids) {
    return ids.isEmpty()
        ? List.of()
        : entries(query("e.state = EntryState.LIVE and e.id in :ids").setParameter("ids", ids));
  }

  /** Asked, announced or answered last: first. */
  List<TalkEntry> latest(EntryKind kind, boolean unanswered, Place place) {
    return entries(
        query(unanswered ? UNANSWERED : LATEST)
            .setParameter("kind", kind)
            .setFirstResult(place.from())
            .setMaxResults(place.most()));
  }

  /** Asked or announced last: first, whatever is answered meanwhile. */
  List<TalkEntry> newest(EntryKind kind, boolean unanswered, Place place) {
    return entries(
        query(unanswered ? UNANSWERED_NEWEST : NEWEST)
            .setParameter("kind", kind)
            .setParameter("at", place.time(0))
            .setParameter("id", place.id(1))
            .setFirstResult(place.from())
            .setMaxResults(place.most()));
  }

  /** Written last first; the index of live entries serves this order. */
  List<TalkEntry> newest(EntryKind kind, int most) {
    return entries(
        query("e.state = EntryState.LIVE and e.kind = :kind order by e.number desc")
            .setParameter("kind", kind)
            .setMaxResults(most));
  }

  /** What this actor may see of a question's answers: the accepted one, then the oldest first. */
  List<TalkEntry> answers(TalkEntry question, Actor actor, Place place) {
    return below(question.id(), question.accepted(), actor, place, 1);
  }

  /**
   * How many answers stand before this one where {@link #answers} lists them; 0 where this actor
   * sees no such answer of the question.
   */
  long answersBefore(TalkEntry question, UUID answer, Actor actor) {
    return before(question.id(), question.accepted(), answer, actor);
  }

  /** What this actor may see of a report's comments, the oldest first. */
  List<TalkEntry> comments(UUID report, Actor actor, Place place) {
    return below(report, null, actor, place, 0);
  }

  /** How many comments stand before this one where {@link #comments} lists them. */
  long commentsBefore(UUID report, UUID comment, Actor actor) {
    return before(report, null, comment, actor);
  }

  /**
   * One page of replies.
   *
   * @param part of the place with which {@link #IN_ORDER} goes on
   */
  private List<TalkEntry> below(UUID above, UUID accepted, Actor actor, Place place, int part) {
    return entries(
        seen(query(SEEN_BELOW.concat(IN_ORDER)), above, accepted, actor)
            .setParameter("first", place.number(part))
            .setParameter("at", place.time(part + 1))
            .setParameter("id", place.id(part + 2))
            .setFirstResult(place.from())
            .setMaxResults(place.most()));
  }

  private long before(UUID above, UUID accepted, UUID reply, Actor actor) {
    return seen(
            getEntityManager().createQuery(BEFORE.concat(SEEN_BELOW), Long.class),
            above,
            accepted,
            actor)
        .setParameter("answer", reply)
        .getSingleResult();
  }

  private static <T> TypedQuery<T> seen(
      TypedQuery<T> query, UUID above, UUID accepted, Actor actor) {
    return query
        .setParameter("above", above)
        .setParameter("reader", actor.signedIn() ? actor.memberId() : NOBODY)
        .setParameter("moderates", actor.moderates())
        .setParameter("accepted", accepted == null ? NOBODY : accepted);
  }

  long liveComments(UUID report) {
    return count(
        "kind = ?1 and entry.parentId = ?2 and entry.state = ?3",
        EntryKind.COMMENT,
        report,
        EntryState.LIVE);
  }

  List<TalkEntry> aboutReport(UUID report, int most) {
    return entries(
        query(
                """
                e.state = EntryState.LIVE and t.reportId = :report
                order by t.activeAt desc, e.number desc\
                """)
            .setParameter("report", report)
            .setMaxResults(most));
  }

  private TypedQuery<Object[]> query(String where) {
    return getEntityManager().createQuery(WITH_NAME.concat(where), Object[].class);
  }

  private static List<TalkEntry> entries(TypedQuery<Object[]> query) {
    return query
        .getResultStream()
        .map(row -> ((TalkEntity) row[0]).toEntry((String) row[1]))
        .toList();
  }

  /** What was told of other times is counted in its own. */
  long writtenBetween(UUID member, Instant since, Instant until) {
    return count(
        "entry.memberId = ?1 and entry.createdAt >= ?2 and entry.createdAt <= ?3",
        member,
        since,
        until);
  }

  /** How many live answers a question has and when the last one came. */
  LiveAnswers liveAnswers(UUID question) {
    return getEntityManager()
        .createQuery(
            """
            select new club.emberwell.talk.TalkRepository$LiveAnswers(count(a), max(a.createdAt))
            from EntryEntity a
            where a.parentId = :question and a.kind = EntryKind.ANSWER
              and a.state = EntryState.LIVE\
            """,
            LiveAnswers.class)
        .setParameter("question", question)
        .getSingleResult();
  }

  /**
   * The live answers of a question together.
   *
   * @param last null where there is none
   */
  record LiveAnswers(Long count, Instant last) {}

  /** The live questions and notices these ids are, or are answers of. */
  List<TalkEntity> behind(Collection<UUID> ids) {
    return getEntityManager()
        .createQuery(
            """
            select t from TalkEntity t join fetch t.entry e
            where e.state = EntryState.LIVE and t.kind in (EntryKind.QUESTION, EntryKind.NOTICE)
              and (e.id in :ids
              or e.id in (select a.parentId from EntryEntity a where a.id in :ids))\
            """,
            TalkEntity.class)
        .setParameter("ids", ids)
        .getResultList();
  }

  List<TalkEntity> liveAfter(long number, int most) {
    return getEntityManager()
        .createQuery(
            """
            select t from TalkEntity t join fetch t.entry e
            where e.state = EntryState.LIVE
              and e.kind in (EntryKind.QUESTION, EntryKind.NOTICE) and e.number > :number
            order by e.number\
            """,
            TalkEntity.class)
        .setParameter("number", number)
        .setMaxResults(most)
        .getResultList();
  }

  /** Texts of live answers, each with its question's id. */
  List<Object[]> answerTexts(Collection<UUID> questions) {
    return getEntityManager()
        .createQuery(
            """
            select a.parentId, t.body from TalkEntity t join t.entry a
            where a.parentId in :questions and a.state = EntryState.LIVE order by a.number\
            """,
            Object[].class)
        .setParameter("questions", questions)
        .getResultList();
  }

  /**
   * Live comments among these ids, each with whom it concerns: the author of the report and whoever
   * commented on it before, but not whoever wrote it.
   */
  public List<Object[]> commentsWithReaders(Collection<UUID> ids) {
    return getEntityManager()
        .createQuery(
            """
            select distinct c.id, o.memberId, c.number
              from EntryEntity c
              join EntryEntity r on r.id = c.parentId
              join EntryEntity o on o.id = r.id
                or o.parentId = r.id and o.kind = EntryKind.COMMENT and o.number < c.number
             where c.id in :ids and c.kind = EntryKind.COMMENT
               and c.state = EntryState.LIVE and r.state = EntryState.LIVE
               and o.state = EntryState.LIVE and o.memberId <> c.memberId
             order by c.number\
            """,
            Object[].class)
        .setParameter("ids", ids)
        .getResultList();
  }

  /** Live answers among these ids, each with the author of its question. */
  public List<Object[]> answersWithAsker(Collection<UUID> ids) {
    return getEntityManager()
        .createQuery(
            """
            select a.id, q.memberId
              from EntryEntity a
              join EntryEntity q on q.id = a.parentId
             where a.id in :ids
               and a.state = EntryState.LIVE and q.state = EntryState.LIVE
               and a.memberId <> q.memberId
             order by a.number\
            """,
            Object[].class)
        .setParameter("ids", ids)
        .getResultList();
  }
}
