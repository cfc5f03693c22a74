package club.emberwell.desk.home;

import club.emberwell.desk.DeskLimits;
import club.emberwell.desk.SqlRepository;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import org.hibernate.Session;

/** What the first screen counts, in one statement. */
@ApplicationScoped
class DeskRepository extends SqlRepository {
  DeskRepository(Session db) {
    super(db);
  }

  DeskHome.Counts counts() {
    Row row =
        rows(
                "select "
                    + count("entry where state = 'waiting'", "waiting")
                    + ", "
                    + count("desk_flag where state = 'open'", "flagged")
                    + ", "
                    + count("unfiled where state = 'waiting'", "words")
                    + ", "
                    + count("desk_caution_proposal where state = 'waiting'", "proposals")
                    + ", "
                    + count(
                        "caution where removal_asked_by is not null and not removed", "removals")
                    + ", "
                    + count("member where status = 'waiting'", "joins")
                    + ", "
                    + count("desk_rule_note where state = 'open'", "notes"),
                "most",
                DeskLimits.COUNT + 1)
            .get(0);
    return new DeskHome.Counts(
        (int) row.number("waiting"),
        (int) row.number("flagged"),
        (int) row.number("words"),
        (int) row.number("proposals"),
        (int) row.number("removals"),
        (int) row.number("joins"),
        (int) row.number("notes"));
  }

  private static String count(String what, String name) {
    return "(select count(*) from (select 1 from " + what + " limit :most) as c) as " + name;
  }

  /** When the oldest thing that waits for a look began to wait; null where nothing waits. */
  Instant oldest() {
    return rows("select least((select min(created_at) from entry where state = 'waiting'),"
            + " (select min(created_at) from desk_flag where state = 'open'),"
            + " (select min(created_at) from desk_caution_proposal where state = 'waiting'))"
            + " as oldest")
        .get(0)
        .time("oldest");
  }
}
