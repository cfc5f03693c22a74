package club.emberwell.desk;

import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.util.List;
import java.util.UUID;

/**
 * A club of 5,000 members with a year of talk, made by the database itself: ids follow from
 * numbers, so that every run makes the same. How much a club talks is an invention; one member in
 * it has every kind of list far longer than a screen.
 */
@ApplicationScoped
class YearOfTalk {
  static final int MEMBERS = 5_000;
  static final int QUESTIONS = 8_000;
  static final int ANSWERS = 20_000;
  static final int NOTICES = 600;
  static final int HITS_EACH = 40;
  static final int BUSY_HITS = 5_000;

  /** A watch of the busy member with a feed. */
  static final String FEED = "a".repeat(43);

  private final EntityManager db;

  YearOfTalk(EntityManager db) {
    this.db = db;
  }

  static UUID id(String kind, int number) {
    return UUID.fromString(kind + "000000-0000-4000-8000-" + "%012d".formatted(number));
  }

  static UUID busyMember() {
    return id("aa", 1);
  }

  /** The question with the most answers. */
  static UUID busyQuestion() {
    return id("bb", 1);
  }

  void make() {
    statements().forEach(sql -> QuarkusTransaction.requiringNew().timeout(300).run(() -> run(sql)));
  }

  private void run(String sql) {
    db.createNativeQuery(sql).executeUpdate();
  }

  private static String made(String kind, String number) {
    return "cast('"
        + kind
        + "000000-0000-4000-8000-' || lpad(cast(("
        + number
        + ") as text), 12, '0') as uuid)";
  }

  private static List<String> statements() {
    String entry =
        "insert into talk_entry (id, kind, version, state, member_id, question_id, title, body,"
            + " material, source, process, answers, active_at, created_at, updated_at) select ";
    String when = "now() - interval '1 year' * (1 - n / %d.0)";
    String asked = when.formatted(QUESTIONS);
    String answered = when.formatted(ANSWERS);
    String told = when.formatted(NOTICES);
    String author = made("aa", "1 + n * 7919 % " + MEMBERS);
    String material = "(array['slate', 'cork', 'walnut', 'brass', null])[1 + n % 5]";
    String words =
        "(array['halo', 'banding', 'smoke', 'focus', 'belt', 'lens', 'fume'])[1 + n % 7]";
    String state = "case when n % 50 = 0 then 'WAITING' else 'LIVE' end";
    // a fifth of all answers are given to one question
    String question =
        made("bb", "case when n % 5 = 0 then 1 else 2 + n % " + (QUESTIONS - 1) + " end");
    return List.of(
        "insert into member (id, handle, email, role, status) select "
            + made("aa", "n")
            + ", 'year-' || n, 'year' || n || '@club.example',"
            + " case when n <= 3 then 'moderator' else 'member' end, 'active'"
            + " from generate_series(1, "
            + MEMBERS
            + ") as n",
        entry
            + made("bb", "n")
            + ", 'QUESTION', 1, case when n = 1 then 'LIVE' else "
            + state
            + " end, "
            + author
            + ", null, 'Question ' || n || ' about ' || "
            + words
            + ", 'What to do about ' || "
            + words
            + " || '?', "
            + material
            + ", null, null, 0, "
            + asked
            + ", "
            + asked
            + ", "
            + asked
            + " from generate_series(1, "
            + QUESTIONS
            + ") as n",
        entry
            + made("cc", "n")
            + ", 'ANSWER', 1, "
            + state
            + ", "
            + author
            + ", "
            + question
            + ", null, 'Mind the ' || "
            + words
            + " || ', answer ' || n, null, null, null, 0, "
            + answered
            + ", "
            + answered
            + ", "
            + answered
            + " from generate_series(1, "
            + ANSWERS
            + ") as n",
        entry
            + made("dd", "n")
            + ", 'NOTICE', 1, 'LIVE', "
            + author
            + ", null, 'Notice ' || n || ' on ' || "
            + words
            + ", 'Text', "
            + material
            + ", null, null, 0, "
            + told
            + ", "
            + told
            + ", "
            + told
            + " from generate_series(1, "
            + NOTICES
            + ") as n",
        "update talk_entry q set answers = (select count(*) from talk_entry a"
            + " where a.question_id = q.id and a.state = 'LIVE') where q.kind = 'QUESTION'",
        "insert into watch (id, member_id, version, label, query, mail, feed_token, created_at)"
            + " select "
            + made("ee", "n")
            + ", "
            + made("aa", "n")
            + ", 1, 'Watch ' || n,"
            + " 'material=' || coalesce("
            + material
            + ", 'oak'), n % 3 = 0,"
            + " case when n = 1 then '"
            + FEED
            + "' end, now() - interval '1 day'"
            + " from generate_series(1, "
            + MEMBERS
            + ") as n",
        hits(made("aa", "m"), made("ee", "m"), "(m * 31 + n * 17) % " + QUESTIONS + " + 1")
            + " from generate_series(2, "
            + MEMBERS
            + ") as m, generate_series(1, "
            + HITS_EACH
            + ") as n on conflict do nothing",
        hits(made("aa", "1"), made("ee", "1"), "n")
            + " from generate_series(1, "
            + BUSY_HITS
            + ") as n on conflict do nothing",
        "insert into change_row (entity, entity_id)"
            + " select lower(kind), id from talk_entry where state = 'LIVE' order by number",
        "analyze");
  }

  private static String hits(String member, String watch, String question) {
    return "insert into watch_hit (member_id, watch_id, entity, entry_id, found_at, mailed_at)"
        + " select "
        + member
        + ", "
        + watch
        + ", 'question', "
        + made("bb", question)
        + ", now() - interval '1 hour', now()";
  }
}
