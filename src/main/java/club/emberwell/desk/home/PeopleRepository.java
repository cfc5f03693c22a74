package club.emberwell.desk.home;

import club.emberwell.desk.SqlRepository;
import club.emberwell.desk.home.People.Person;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import org.hibernate.Session;

/** Members as the desk sees them. */
@ApplicationScoped
class PeopleRepository extends SqlRepository {
  private static final String SELECT =
      "select m.id as id, case when m.status = 'erased' then 'former member' else m.handle end"
          + " as handle, m.role as role, m.status as status, m.created_at as joined,"
          + " exists (select 1 from desk_trust t where t.member_id = m.id) as trusted"
          + " from member m ";

  PeopleRepository(Session db) {
    super(db);
  }

  /** The index on lower(handle) serves this in the C collation only; a club's table is small. */
  List<Person> find(String start, int from, int most) {
    return rows(
            SELECT
                + "where m.status <> 'erased' and starts_with(lower(m.handle), :start)"
                + " order by lower(m.handle) offset :skip limit :most",
            "start",
            start.toLowerCase(Locale.ROOT),
            "skip",
            from,
            "most",
            most)
        .stream()
        .map(PeopleRepository::person)
        .toList();
  }

  Optional<Person> one(UUID id) {
    return rows(SELECT + "where m.id = :id", "id", id).stream()
        .findFirst()
        .map(PeopleRepository::person);
  }

  /** Moderators and owners who can act. */
  List<UUID> inCharge() {
    return rows(
            "select id from member where role in ('moderator', 'owner') and status = 'active'"
                + " order by number")
        .stream()
        .map(row -> row.uuid("id"))
        .toList();
  }

  private static Person person(Row row) {
    return new Person(
        row.uuid("id"),
        row.text("handle"),
        row.text("role"),
        row.text("status"),
        row.time("joined"),
        row.yes("trusted"));
  }
}
