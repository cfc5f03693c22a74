package club.emberwell.desk.home;

import club.emberwell.desk.home.People.Person;
import club.emberwell.listing.Place;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import org.hibernate.Session;

/** Members as the desk sees them. */
@ApplicationScoped
class PeopleRepository {
  private final Session db;

  PeopleRepository(Session db) {
    this.db = db;
  }

  /** The index on lower(handle) serves this in the C collation only; a club's table is small. */
  List<Person> find(String start, Place place) {
    return db.createNativeQuery(
            """
            select m.id, m.handle, m.role, m.status, m.created_at,
              exists (select 1 from desk_trust t where t.member_id = m.id)
            from member m
            where m.status <> 'erased' and starts_with(lower(m.handle), :start)
              and lower(m.handle) > :after
            order by lower(m.handle) offset :skip limit :most
            """,
            Person.class)
        .setParameter("start", start.toLowerCase(Locale.ROOT))
        .setParameter("after", place.word(0))
        .setParameter("skip", place.from())
        .setParameter("most", place.most())
        .getResultList();
  }

  Optional<Person> one(UUID id) {
    return db.createNativeQuery(
            """
            select m.id, m.handle,
              m.role, m.status, m.created_at,
              exists (select 1 from desk_trust t where t.member_id = m.id)
            from member m
            where m.id = :id
            """,
            Person.class)
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
