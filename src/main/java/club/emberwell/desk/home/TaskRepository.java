package club.emberwell.desk.home;

import club.emberwell.desk.DeskLimits;
import club.emberwell.listing.Place;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.UUID;
import org.hibernate.Session;

/** Reads what waits, whatever it is, in one statement. */
@ApplicationScoped
class TaskRepository {
  /** Of each kind no more than a moderator decides in one go, so that a flood costs no more. */
  private static final String TASKS =
      """
      select kind, rank, since, id, title, who, about, n from (
        select 'flag' as kind,
          case when bool_or(f.reason in ('unsafe-advice', 'personal-data', 'rights')) then 0
            else 1 end as rank,
          min(f.created_at) as since, e.id as id, e.title as title, m.handle as who,
          e.kind || ' ' || string_agg(distinct f.reason, ' ') as about, count(*) as n
        from (select * from desk_flag where state = 'open' order by created_at limit :most) f
        join entry e on e.id = f.entry_id join member m on m.id = e.member_id
        where e.member_id <> :me and f.reason in (:reasons)
        group by e.id, m.handle
        union all
        select 'entry', 2, e.created_at, e.id, e.title, m.handle, e.kind, 1
        from (select * from entry where state = 'waiting' order by created_at limit :most) e
        join member m on m.id = e.member_id
        where e.member_id <> :me
        union all
        select 'request', 3, min(j.asked_at), cast(md5('requests') as uuid), min(m.handle), null, '',
          count(*)
        from join_request j join member m on m.id = j.member_id
        where j.decided_at is null having count(*) > 0
        union all
        select 'proposal', 4, p.created_at, p.id, p.rule ->> 'hazard', m.handle, '', 1
        from desk_caution_proposal p join member m on m.id = p.member_id
        where p.state = 'waiting' and p.member_id <> :me
        union all
        select 'removal', 5, c.removal_asked_at, cast(md5(c.id) as uuid), c.rule ->> 'hazard', null,
          c.id, 1
        from caution c
        where c.removal_asked_by <> :me and not c.removed
        union all
        select 'notes', 6, min(n.at), cast(md5(n.rule || m.id) as uuid), n.rule, m.handle,
          n.rule || ' ' || m.id, count(*)
        from (select * from desk_rule_note where state = 'open' order by id limit :most) n
        join entry e on e.id = n.entry_id join member m on m.id = e.member_id
        where e.member_id <> :me
        group by n.rule, m.id
        union all
        select 'word', 7, u.first_seen, u.id, u.written, null, u.kind, u.count
        from (select * from unfiled where state = 'waiting' order by first_seen limit :most) u) t
      where\s""";

  private static final String WORST_FIRST =
      TASKS.concat(
          """
          (rank, since, id) > (:rank, :since, :id)
          order by rank, since, id limit :rows offset :skip""");

  private static final String OLDEST_FIRST =
      TASKS.concat(
          """
          (since, rank, id) > (:since, :rank, :id)
          order by since, rank, id limit :rows offset :skip""");

  private final Session db;

  TaskRepository(Session db) {
    this.db = db;
  }

  /**
   * @param me who would decide
   * @param reasons of flags that they may settle
   */
  List<Task> of(UUID me, List<String> reasons, boolean oldest, Place place) {
    return db.createNativeQuery(oldest ? OLDEST_FIRST : WORST_FIRST, Task.class)
        .setParameter("me", me)
        .setParameterList("reasons", reasons)
        .setParameter("most", DeskLimits.TASKS_READ)
        .setParameter("rank", place.number(oldest ? 1 : 0))
        .setParameter("since", place.time(oldest ? 0 : 1))
        .setParameter("id", place.id(2))
        .setParameter("rows", place.most())
        .setParameter("skip", place.from())
        .getResultList();
  }
}
