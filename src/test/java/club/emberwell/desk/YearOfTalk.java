package club.emberwell.desk;

import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Map;
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

  void make() throws IOException {
    String[] script = sql().split(";");
    QuarkusTransaction.requiringNew().timeout(300).run(() -> run(script));
  }

  private void run(String[] script) {
    for (String sql : script) {
      if (!sql.isBlank()) {
        db.createNativeQuery(sql).executeUpdate();
      }
    }
  }

  /** The script with its figures and kinds put in. */
  private static String sql() throws IOException {
    Map<String, Object> figures =
        Map.of(
            "MEMBERS", MEMBERS,
            "QUESTIONS", QUESTIONS,
            "ANSWERS", ANSWERS,
            "NOTICES", NOTICES,
            "BUSY_HITS", BUSY_HITS,
            "HITS_EACH", HITS_EACH,
            "FEED", FEED);
    try (InputStream in = YearOfTalk.class.getResourceAsStream("/year-of-talk.sql")) {
      String sql = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      for (Map.Entry<String, Object> figure : figures.entrySet()) {
        sql = sql.replace("{" + figure.getKey() + "}", figure.getValue().toString());
      }
      return sql;
    }
  }
}
