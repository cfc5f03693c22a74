package club.emberwell.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.entry.EntryRef;
import club.emberwell.member.Actor;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Revisions and decisions through the application's own connection. */
@QuarkusTest
class HistoryTest {
  private static final String ERASING =
      "insert into erasure (member_id, choice, at) values (gen_random_uuid(), 'keep', now())";

  @Inject Cast cast;
  @Inject DataSource database;

  /** One row in each history, so that a refusal is not for want of rows. */
  @BeforeEach
  void somethingHappened() {
    Actor member = cast.member();
    EntryRef report = cast.report(member);
    cast.question(member, "Words of " + report.id());
    cast.run(
        "insert into entry_revision (entry_id, version, rule, action, reason, at, state)"
            + " values ('%s', 2, 'burst', 'held', 'Fine.', now(), 'held')".formatted(report.id()));
    cast.run(
        "insert into catalog_revision (subject, subject_id, version, why)"
            + " values ('term', 'material:history-test', 1, 'Somebody asked.')");
    cast.run(
        "insert into audit (action, entity, entity_id)"
            + " values ('try', 'report', '%s')".formatted(report.id()));
    cast.run(ERASING);
  }

  @ParameterizedTest
  @ValueSource(strings = {"catalog_revision", "entry_revision", "erasure", "audit"})
  void theApplicationCannotTakeAnythingBack(String table) throws SQLException {
    long before = cast.count("select count(*) from " + table);
    assertTrue(before > 0);
    refused("delete from " + table);
    refused("truncate " + table + " cascade");
    assertTrue(cast.count("select count(*) from " + table) >= before);
  }

  @ParameterizedTest
  @CsvSource({
    "catalog_revision, why",
    "catalog_revision, after",
    "catalog_revision, at",
    "entry_revision, reason",
    "entry_revision, written",
    "entry_revision, version",
    "entry_revision, state",
    "entry_revision, action",
    "entry_revision, rule",
    "erasure, choice",
    "erasure, at"
  })
  void theApplicationCannotSayItWasOtherwise(String table, String column) throws SQLException {
    refused(otherwise(table, column));
  }

  @ParameterizedTest
  @CsvSource({
    "catalog_revision, at",
    "catalog_revision, subject_id",
    "entry_revision, version",
    "entry_revision, at",
    "entry_revision, state",
    "entry_revision, action",
    "entry_revision, member_id"
  })
  void noErasureChangesWhatWasDoneAndWhen(String table, String column) throws SQLException {
    refused(ERASING, otherwise(table, column));
  }

  @Test
  void theHistoryOfTheVocabularyStaysEvenInAnErasure() throws SQLException {
    refused(ERASING, "delete from catalog_revision");
  }

  @Test
  void anErasureTakesATextOutOfTheHistoryOfTheVocabulary() {
    cast.run(
        "do 'begin %s; update catalog_revision set why = ''removed''"
                .formatted(ERASING.replace("'", "''"))
            + " where why = ''Somebody asked.''; end'");
    assertEquals(
        0, cast.count("select count(*) from catalog_revision where why = 'Somebody asked.'"));
  }

  private static String otherwise(String table, String column) {
    String value =
        switch (column) {
          case "at" -> "now() - interval '9 years'";
          case "version" -> "version + 900";
          case "written", "after" -> "'{}'";
          case "member_id" -> "null";
          case "choice" -> "'remove'";
          case "action" -> "'removed'";
          case "state" -> "'removed'";
          default -> "'never said'";
        };
    return "update " + table + " set " + column + " = " + value;
  }

  /** The last statement of a transaction is refused, and nothing of it stays. */
  private void refused(String... statements) throws SQLException {
    try (Connection connection = database.getConnection();
        Statement sql = connection.createStatement()) {
      connection.setAutoCommit(false);
      for (int i = 0; i < statements.length - 1; i++) {
        sql.executeUpdate(statements[i]);
      }
      String last = statements[statements.length - 1];
      SQLException e = assertThrows(SQLException.class, () -> sql.executeUpdate(last), last);
      assertTrue(e.getMessage().contains("append-only"), e.getMessage());
      connection.rollback();
    }
  }
}
