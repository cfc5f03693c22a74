package club.emberwell.desk.home;

import club.emberwell.desk.DeskLimits;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import org.hibernate.Session;

/** What the first screen counts, in one statement. */
@ApplicationScoped
class DeskRepository {
  private final Session db;

  DeskRepository(Session db) {
    this.db = db;
  }

  DeskHome.Counts counts() {
    return db.createNativeQuery(
            """
            select
              cast((select count(*) from (
                select 1 from entry where state = 'waiting' limit :most) c) as integer) as waiting,
              cast((select count(*) from (
                select 1 from desk_flag where state = 'open' limit :most) c) as integer) as flagged,
              cast((select count(*) from (
                select 1 from unfiled where state = 'waiting' limit :most) c) as integer) as words,
              cast((select count(*) from (
                select 1 from desk_caution_proposal where state = 'waiting' limit :most) c)
                as integer) as proposals,
              cast((select count(*) from (
                select 1 from caution where removal_asked_by is not null and not removed
                limit :most) c) as integer) as removals,
              cast((select count(*) from (
                select 1 from member where status = 'waiting' limit :most) c) as integer) as joins,
              cast((select count(*) from (
                select 1 from desk_rule_note where state = 'open' limit :most) c) as integer) as notes
            """,
            DeskHome.Counts.class)
        .setParameter("most", DeskLimits.COUNT + 1)
        .getSingleResult();
  }

  /** When the oldest thing that waits for a look began to wait; null where nothing waits. */
  Instant oldest() {
    return db.createNativeQuery(
            """
            select least(
              (select min(created_at) from entry where state = 'waiting'),
              (select min(created_at) from desk_flag where state = 'open'),
              (select min(created_at) from desk_caution_proposal where state = 'waiting'))
            """,
            Instant.class)
        .getSingleResult();
  }

  /** The same of everything that waits: notes, words, removals and requests to join too. */
  Instant oldestOfAll() {
    return db.createNativeQuery(
            """
            select least(
              (select min(created_at) from entry where state = 'waiting'),
              (select min(created_at) from desk_flag where state = 'open'),
              (select min(created_at) from desk_caution_proposal where state = 'waiting'),
              (select min(removal_asked_at) from caution where not removed),
              (select min(asked_at) from join_request where decided_at is null),
              (select at from desk_rule_note where state = 'open' order by id limit 1),
              (select min(first_seen) from unfiled where state = 'waiting'))
            """,
            Instant.class)
        .getSingleResult();
  }
}
