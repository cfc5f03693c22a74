package club.emberwell.desk.home;

import club.emberwell.desk.DeskLimits;
import club.emberwell.desk.flag.FlagReason;
import club.emberwell.listing.Place;
import club.emberwell.remark.Coded;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.Tuple;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.hibernate.Session;

/** Reads what waits, whatever it is, in one statement. */
@ApplicationScoped
class TaskRepository {
  private static final String WORST_FIRST =
      tasks(
          """
          where (rank, since, id) > (:rank, :since, :id)
          order by rank, since, id limit :rows offset :skip\
          """);

  private static final String OLDEST_FIRST =
      tasks(
          """
          where (since, rank, id) > (:since, :rank, :id)
          order by since, rank, id limit :rows offset :skip\
          """);

  private final Session db;

  TaskRepository(Session db) {
    this.db = db;
  }

  private static String tasks(String inOrder) {
    return Stream.of(TaskKind.values())
        .map(
            kind ->
                """
                select cast('%s' as text) as kind, %s\
                """
                    .formatted(kind.code(), waiting(kind)))
        .collect(
            Collectors.joining(
                """

                union all
                """,
                """
                select kind, rank, since, id, title, who, about, member, reasons, n from (
                """,
                """
                ) t
                """))
        .concat(inOrder);
  }

  /** Of each kind no more than a moderator decides in one go, so that a flood costs no more. */
  private static String waiting(TaskKind kind) {
    return switch (kind) {
      case FLAG ->
          """
          min(%s) as rank, min(f.created_at) as since, e.id as id, e.title as title,
            m.handle as who, e.kind as about, cast(null as uuid) as member,
            string_agg(distinct f.reason, ' ') as reasons, count(*) as n
          from (select * from desk_flag where state = 'open' order by created_at limit :most) f
          join entry e on e.id = f.entry_id join member m on m.id = e.member_id
          where e.member_id <> :me and f.reason in (:reasons)
          group by e.id, m.handle\
          """
              .formatted(rankOfReason());
      case ENTRY ->
          """
          %d, e.created_at, e.id, e.title, m.handle, e.kind, null, null, 1
          from (select * from entry where state = 'waiting' order by created_at limit :most) e
          join member m on m.id = e.member_id
          where e.member_id <> :me\
          """
              .formatted(kind.rank());
      case REQUEST ->
          """
          %d, min(j.asked_at), cast(md5('requests') as uuid), min(m.handle), null, null, null, null,
            count(*)
          from join_request j join member m on m.id = j.member_id
          where j.decided_at is null having count(*) > 0\
          """
              .formatted(kind.rank());
      case PROPOSAL ->
          """
          %d, p.created_at, p.id, p.rule ->> 'hazard', m.handle, null, null, null, 1
          from desk_caution_proposal p join member m on m.id = p.member_id
          where p.state = 'waiting' and p.member_id <> :me\
          """
              .formatted(kind.rank());
      case REMOVAL ->
          """
          %d, c.removal_asked_at, cast(md5(c.id) as uuid), c.rule ->> 'hazard', null, c.id, null,
            null, 1
          from caution c
          where c.removal_asked_by <> :me and not c.removed\
          """
              .formatted(kind.rank());
      case NOTES ->
          """
          %d, min(n.at), cast(md5(n.rule || m.id) as uuid), n.rule, m.handle, n.rule, m.id, null,
            count(*)
          from (select * from desk_rule_note where state = 'open' order by id limit :most) n
          join entry e on e.id = n.entry_id join member m on m.id = e.member_id
          where e.member_id <> :me
          group by n.rule, m.id\
          """
              .formatted(kind.rank());
      case WORD ->
          """
          %d, u.first_seen, u.id, u.written, null, u.kind, null, null, u.count
          from (select * from unfiled where state = 'waiting' order by first_seen limit :most) u\
          """
              .formatted(kind.rank());
    };
  }

  private static String rankOfReason() {
    return Stream.of(FlagReason.values())
        .map(reason -> "when '%s' then %d".formatted(reason.code(), reason.rank()))
        .collect(Collectors.joining(" ", "case f.reason ", " end"));
  }

  /**
   * @param me who would decide
   * @param reasons of flags that they may settle
   */
  List<Task> of(UUID me, List<FlagReason> reasons, boolean oldest, Place place) {
    return db.createNativeQuery(oldest ? OLDEST_FIRST : WORST_FIRST, Tuple.class)
        .setParameter("me", me)
        .setParameterList("reasons", reasons.stream().map(FlagReason::code).toList())
        .setParameter("most", DeskLimits.TASKS_READ)
        .setParameter("rank", place.number(oldest ? 1 : 0))
        .setParameter("since", place.time(oldest ? 0 : 1))
        .setParameter("id", place.id(2))
        .setParameter("rows", place.most())
        .setParameter("skip", place.from())
        .getResultStream()
        .map(TaskRepository::read)
        .toList();
  }

  private static Task read(Tuple row) {
    String reasons = row.get("reasons", String.class);
    return new Task(
        Coded.of(TaskKind.class, row.get("kind", String.class)).orElseThrow(),
        ((Number) row.get("rank")).intValue(),
        row.get("since", Instant.class),
        row.get("id", UUID.class),
        row.get("title", String.class),
        row.get("who", String.class),
        new Task.About(
            row.get("about", String.class),
            row.get("member", UUID.class),
            reasons == null ? List.of() : reasons(reasons)),
        ((Number) row.get("n")).longValue());
  }

  private static List<FlagReason> reasons(String codes) {
    return Stream.of(codes.split(" "))
        .map(code -> Coded.of(FlagReason.class, code).orElseThrow())
        .toList();
  }
}
