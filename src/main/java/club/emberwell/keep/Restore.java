package club.emberwell.keep;

import club.emberwell.keep.KeepRefused.Why;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;

/**
 * Makes a club of an archive, in a database where no server runs. All of it is laid out and
 * compared beside what is there; then both change places in one transaction, so that whatever
 * happens there is either the old club or the new one.
 */
public final class Restore {
  /** Longer than any statement that is no server's. */
  private static final String PATIENCE = "SET LOCAL lock_timeout = '20s'";

  private static final String SERVERS =
      """
      SELECT count(*) FROM pg_stat_activity
       WHERE datname = current_database() AND application_name = 'emberwell'
         AND pid <> pg_backend_pid()
      """;
  private static final String MEMBERS = "SELECT count(*) FROM member";

  private final DatabaseLogin database;
  private final Wishes wishes;
  private final Consumer<String> progress;

  /**
   * What is to become of a restored club.
   *
   * @param endTokens whether keys of programs end, as sessions do
   * @param holdMail whether letters and calls of webhooks that waited are never sent
   * @param erased those who left, as the home knows
   */
  public record Wishes(boolean endTokens, boolean holdMail, List<Erased> erased) {}

  /**
   * A restore to do.
   *
   * @param progress is told what comes back, line by line
   */
  public Restore(DatabaseLogin database, Wishes wishes, Consumer<String> progress) {
    this.database = database;
    this.wishes = wishes;
    this.progress = progress;
  }

  /** Whether a club is there: one to which nobody belongs yet is none. */
  public boolean isClubThere() {
    try (Connection connection = database.connect()) {
      return SchemaVersion.appliedTo(connection) > 0 && number(connection, MEMBERS) > 0;
    } catch (SQLException e) {
      throw unusable(e);
    }
  }

  /** Refuses where a server works on the database. */
  public void requireNoServer() {
    try (Connection connection = database.connect()) {
      requireNoServer(connection);
    } catch (SQLException e) {
      throw unusable(e);
    }
  }

  /**
   * Puts what is in the archive in the place of what is in the database.
   *
   * @throws KeepRefused where that cannot be done; then nothing has changed
   */
  public void from(Archive archive) {
    requireNoServer();
    try (Scratch scratch = Scratch.in(database, progress)) {
      Belongings belongings = scratch.layOut(archive);
      Set<Erased> erased = new LinkedHashSet<>(wishes.erased());
      try (Connection old = database.connect()) {
        erased.addAll(Erased.in(old));
      }
      try (Connection connection = scratch.connect()) {
        new Aftermath(connection).settle(wishes, new ArrayList<>(erased), archive.manifest());
      }
      swap(belongings);
    } catch (SQLException e) {
      throw unusable(e);
    }
  }

  /**
   * Tries whether an archive can be restored, and leaves nothing behind.
   *
   * @throws KeepRefused where it cannot
   */
  public void rehearse(Archive archive) {
    try (Scratch scratch = Scratch.in(database, progress)) {
      scratch.layOut(archive);
    } catch (SQLException e) {
      throw unusable(e);
    }
  }

  private void swap(Belongings belongings) throws SQLException {
    try (Connection connection = database.connect()) {
      connection.setAutoCommit(false);
      try (Statement statement = connection.createStatement()) {
        statement.execute(PATIENCE);
      }
      belongings.replaceBy(Scratch.NAME, connection);
      // whoever started meanwhile waits for us now, and would go on with other tables
      requireNoServer(connection);
      connection.commit();
    }
  }

  private static void requireNoServer(Connection connection) throws SQLException {
    if (number(connection, SERVERS) > 0) {
      throw new KeepRefused(
          Why.IN_USE, "A server is running on this database; stop it first. Nothing was changed.");
    }
  }

  private static long number(Connection connection, String select) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery(select)) {
      row.next();
      return row.getLong(1);
    }
  }

  private static KeepRefused unusable(SQLException e) {
    boolean forbidden = "42501".equals(e.getSQLState());
    String cure =
        forbidden
            ? "; its user must own the tables and be allowed to make a schema"
                + " (GRANT CREATE ON DATABASE … TO …)"
            : "";
    return new KeepRefused(
        Why.DATABASE,
        "The database cannot be used: " + e.getMessage() + cure + ". Nothing was changed.",
        e);
  }
}
