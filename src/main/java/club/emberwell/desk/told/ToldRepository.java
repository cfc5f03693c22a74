package club.emberwell.desk.told;

import club.emberwell.desk.told.Told.News;
import club.emberwell.entry.Verdicts;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.UUID;
import java.util.stream.Collectors;
import org.hibernate.Session;

/** How far members read what the desk told them. */
@ApplicationScoped
class ToldRepository {
  /** Written into the statement: a partial index serves no parameters. */
  private static final String DECIDED =
      Verdicts.TOLD.stream()
          .map(action -> "'%s'".formatted(action.code()))
          .collect(Collectors.joining(", "));

  private final Session db;

  ToldRepository(Session db) {
    this.db = db;
  }

  News news(UUID member, int most) {
    return db.createNativeQuery(
            """
            select
              cast((select count(*) from (
                select 1 from entry_revision v join entry e on e.id = v.entry_id
                where v.at > t.read_to and v.action in (%s)
                  and (v.member_id is not null or v.rule is not null)
                  and e.member_id = :member limit :most) c) as integer) as decisions,
              cast((select count(*) from (
                select 1 from desk_flag f
                where f.member_id = :member and f.decided_at > t.read_to limit :most) c)
                as integer) as answers,
              cast((select count(*) from (
                select 1 from entry e join room_check c on c.room_id = e.id
                where e.member_id = :member and e.kind = 'room' and e.state = 'live'
                  and c.due_on > cast(t.read_to at time zone 'UTC' as date)
                  and c.due_on <= cast(now() at time zone 'UTC' as date) limit :most) c)
                as integer) as checks,
              t.read_to as read_to
            from (select coalesce((select read_to from told where member_id = :member),
              (select created_at from member where id = :member)) as read_to) t
            """
                .formatted(DECIDED),
            News.class)
        .setParameter("member", member)
        .setParameter("most", most)
        .getSingleResult();
  }

  void read(UUID member, Instant upTo) {
    db.createNativeMutationQuery(
            """
            insert into told (member_id, read_to) values (:member, :upTo)
            on conflict (member_id) do update set read_to = greatest(told.read_to, excluded.read_to)
            """)
        .setParameter("member", member)
        .setParameter("upTo", upTo)
        .executeUpdate();
  }
}
