package club.emberwell.keep;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.ZoneOffset;
import java.util.List;

/**
 * What a restored club must not go on with as if no time had passed: who was signed in, what was
 * under way, numbers of transactions of another server, people who left since.
 */
record Aftermath(Connection connection) {
  private static final List<String> ALWAYS =
      List.of(
          // a cookie or a link of before may be anywhere by now
          "DELETE FROM session",
          "DELETE FROM once_link",
          "DELETE FROM owner_code",
          "DELETE FROM sso_arrival",
          "DELETE FROM sso_state",
          // numbers of another server; the next start begins a history over what is here
          "DELETE FROM change_row",
          """
          UPDATE history_epoch
             SET epoch = gen_random_uuid(), trimmed_xid = 0, trimmed_seq = 0
          """,
          "DELETE FROM report_change",
          """
          INSERT INTO report_change (report_id)
          SELECT id FROM entry WHERE kind = 'report' ORDER BY number
          """,
          // the data to take along may hold what somebody took back since
          "DELETE FROM data_package",
          "UPDATE data_making SET asked_at = now(), maker = NULL, until = NULL",
          // which of them lie here is looked up at the next start
          "DELETE FROM backup");
  private static final List<String> END_TOKENS =
      List.of(
          "UPDATE api_token SET revoked_at = now() WHERE revoked_at IS NULL",
          "UPDATE recipe_link SET ended_at = now() WHERE ended_at IS NULL");
  private static final List<String> HOLD_MAIL =
      List.of(
          "DELETE FROM mail_outbox",
          """
          UPDATE webhook_delivery SET state = 'dropped', ended_at = now()
           WHERE state = 'waiting'
          """);
  private static final String ERASED =
      """
      INSERT INTO erasure (member_id, choice, at) VALUES (?, ?, ?)
      ON CONFLICT (member_id) DO NOTHING
      """;

  /** Whoever carries an entry out may change histories in that transaction: in none of ours. */
  private static final String ERASURES_ARE_OVER = "UPDATE erasure SET xid = pg_current_xact_id()";

  private static final String LOG =
      """
      INSERT INTO audit (action, entity, entity_id, detail)
      VALUES ('restore-backup', 'club', 'backup', jsonb_build_object('of', cast(? AS text)))
      """;

  /** Settles all of it in one transaction. */
  void settle(Restore.Wishes wishes, List<Erased> erased, Manifest manifest) throws SQLException {
    connection.setAutoCommit(false);
    try (Statement statement = connection.createStatement()) {
      for (String step : ALWAYS) {
        statement.executeUpdate(step);
      }
      if (wishes.endTokens()) {
        for (String step : END_TOKENS) {
          statement.executeUpdate(step);
        }
      }
      if (wishes.holdMail()) {
        for (String step : HOLD_MAIL) {
          statement.executeUpdate(step);
        }
      }
    }
    try (PreparedStatement enter = connection.prepareStatement(ERASED)) {
      for (Erased one : erased) {
        enter.setObject(1, one.member());
        enter.setString(2, one.choice());
        enter.setObject(3, one.at().atOffset(ZoneOffset.UTC));
        enter.executeUpdate();
      }
    }
    try (Statement statement = connection.createStatement();
        PreparedStatement log = connection.prepareStatement(LOG)) {
      statement.executeUpdate(ERASURES_ARE_OVER);
      log.setString(1, manifest.at().toString());
      log.executeUpdate();
    }
    connection.commit();
    connection.setAutoCommit(true);
    try (Statement statement = connection.createStatement()) {
      // or the first readers wait for plans made without figures
      statement.execute("ANALYZE");
    }
  }
}
