package club.emberwell.desk.home;

import club.emberwell.desk.home.People.Person;
import club.emberwell.entry.EntryKind;
import club.emberwell.listing.Place;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import org.hibernate.Session;

/** Members as the desk sees them. */
@ApplicationScoped
class PeopleRepository {
  private static final String PERSON =
      """
      select m.id, m.handle, m.role, m.status, m.created_at,
        exists (select 1 from desk_trust t where t.member_id = m.id),
        (select count(*) from entry e
          where e.member_id = m.id and e.state <> 'withdrawn' and e.kind in (:posts)),
        greatest((select max(s.last_seen) from session s where s.member_id = m.id),
          (select max(k.last_used) from api_token k where k.member_id = m.id),
          (select max(e.created_at) from entry e where e.member_id = m.id))
      from member m
      where\s""";

  private static final List<String> POSTS = EntryKind.POSTS.stream().map(EntryKind::code).toList();

  private final Session db;

  PeopleRepository(Session db) {
    this.db = db;
  }

  /** The index on lower(handle) serves this in the C collation only; a club's table is small. */
  List<Person> find(String start, Instant since, Place place) {
    return db.createNativeQuery(
            PERSON.concat(
                """
                m.status <> 'erased' and starts_with(lower(m.handle), :start)
                  and m.created_at >= :since and lower(m.handle) > :after
                order by lower(m.handle) offset :skip limit :most"""),
            Person.class)
        .setParameterList("posts", POSTS)
        .setParameter("start", start.toLowerCase(Locale.ROOT))
        .setParameter("since", since)
        .setParameter("after", place.word(0))
        .setParameter("skip", place.from())
        .setParameter("most", place.most())
        .getResultList();
  }

  Optional<Person> one(UUID id) {
    return db.createNativeQuery(PERSON.concat("m.id = :id"), Person.class)
        .setParameterList("posts", POSTS)
        .setParameter("id", id)
        .uniqueResultOptional();
  }

  /** Moderators and owners who can act. */
  List<UUID> inCharge() {
    return db.createNativeQuery(
            """
            select id from member
            where role in ('moderator', 'owner') and status = 'active'
            order by number
            """,
            UUID.class)
        .getResultList();
  }
}
