package club.emberwell.desk.log;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.desk.Cast;
import club.emberwell.desk.DeskLimits;
import club.emberwell.desk.word.VocabularyCare;
import club.emberwell.listing.Part;
import club.emberwell.member.Actor;
import club.emberwell.member.Audit;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.IOException;
import java.io.StringWriter;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Map;
import java.util.UUID;
import javax.sql.DataSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The log through the application's own connection. */
@QuarkusTest
class AuditTrailTest {
  @Inject Cast cast;
  @Inject Audit audit;
  @Inject AuditTrail trail;
  @Inject VocabularyCare care;
  @Inject DataSource database;

  @ParameterizedTest
  @ValueSource(
      strings = {
        "update audit set reason = 'never said'",
        "delete from audit",
        "truncate audit",
        "update audit set member_id = null"
      })
  void theApplicationCannotRewriteTheLog(String statement) throws SQLException {
    audit.record(cast.moderator(), "test", "nothing", "1", "Said.", Map.of());
    long before = cast.count("select count(*) from audit");
    try (Connection connection = database.getConnection();
        Statement sql = connection.createStatement()) {
      SQLException refused = assertThrows(SQLException.class, () -> sql.executeUpdate(statement));
      assertTrue(refused.getMessage().contains("append-only"), refused.getMessage());
    }
    assertTrue(cast.count("select count(*) from audit") >= before);
  }

  @Test
  void anExportGoesOnOverSeveralPortions() throws IOException {
    Actor moderator = cast.moderator();
    int lines = DeskLimits.AUDIT_BATCH + 7;
    cast.run(
        ("insert into audit (member_id, action, entity, entity_id)"
                + " select '%s', 'test', 'nothing', n::text"
                + " from generate_series(1, %d) as n")
            .replace("::text", "||''")
            .formatted(moderator.memberId(), lines));
    AuditFilter filter = new AuditFilter(moderator.handle(), "test", null, null, null, null);
    StringWriter out = new StringWriter();
    trail.export(trail.exportable(moderator, filter), AuditTrail.Format.CSV, out);
    assertEquals(lines + 1, out.toString().lines().count());
    assertEquals(DeskLimits.AUDIT_PAGE, trail.page(moderator, filter, Part.FIRST).rows().size());
  }

  @Test
  void aDeedAboutTheVocabularyIsOneRowOfItsHistoryAndALineOfTheLog() {
    Actor moderator = cast.moderator();
    UUID word = UUID.randomUUID();
    cast.run(
        "insert into unfiled (id, kind, written, folded) values ('%s', 'material', '%s', '%s')"
            .formatted(word, word, word));
    care.dismiss(moderator, word, "Not a word.");
    AuditFilter about = new AuditFilter(null, null, "unfiled", word.toString(), null, null);
    AuditLine line = trail.page(moderator, about, Part.FIRST).rows().get(0);
    assertEquals("dismiss-word", line.action());
    assertEquals(moderator.handle(), line.who());
    assertEquals("Not a word.", line.reason());
    assertEquals(
        0, cast.count("select count(*) from audit where entity_id = '%s'".formatted(word)));
  }
}
