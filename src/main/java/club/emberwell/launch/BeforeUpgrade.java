package club.emberwell.launch;

import club.emberwell.keep.KeepRefused;
import club.emberwell.keep.SchemaVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import org.jboss.logging.Logger;

/** A backup before a start changes the tables: the way back to the program of before. */
final class BeforeUpgrade {
  private static final Logger LOG = Logger.getLogger(BeforeUpgrade.class);
  private static final String SETTING = "emberwell.backup.before-upgrade";

  /** What an archive takes at most: rows of a table as text, packed, take less than the table. */
  private static final String SIZE =
      """
      SELECT coalesce(sum(pg_total_relation_size(oid)), 0) FROM pg_class
       WHERE relnamespace = current_schema()::regnamespace AND relkind = 'r'
      """;

  private final Given given;
  private final Path home;

  BeforeUpgrade(Given given, Path home) {
    this.given = given;
    this.home = home;
  }

  /**
   * Makes one where tables are there that are older than the program.
   *
   * @throws LaunchException where it cannot be made; then nothing was changed
   */
  void keep(Database database, Connection connection) throws SQLException {
    int applied = SchemaVersion.appliedTo(connection);
    if (applied == 0
        || applied == SchemaVersion.known()
        || !Kinds.isYes(given.valueOrDefault(SETTING))) {
      return;
    }
    Keeping keeping = new Keeping(given, home, line -> {});
    requireRoom(keeping.folder(), connection);
    LOG.infof(
        "The tables go from version %d to %d; a backup is made first",
        applied, SchemaVersion.known());
    try {
      Path file = keeping.of(database.kept()).into(keeping.folder()).file();
      LOG.infof("The backup is %s", file);
    } catch (KeepRefused e) {
      throw new LaunchException(ExitCode.of(e.why()), refusal(e.getMessage()), e);
    }
  }

  private static void requireRoom(Path folder, Connection connection) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery(SIZE)) {
      row.next();
      long needed = row.getLong(1);
      long free = Files.getFileStore(Files.createDirectories(folder)).getUsableSpace();
      if (free < needed) {
        String sizes = "%,d of %,d MB are free".formatted(free >> 20, needed >> 20);
        throw new LaunchException(
            ExitCode.WRONG_SETTING, refusal("There is no room in " + folder + " (" + sizes + ")"));
      }
    } catch (IOException e) {
      throw new LaunchException(
          ExitCode.WRONG_SETTING, refusal(folder + " cannot be written (" + e + ")"), e);
    }
  }

  private static String refusal(String why) {
    return "Before the tables are changed a backup is made, and cannot be: "
        + why
        + "; name another place with EMBERWELL_BACKUP_DIR, or go without with "
        + Given.variable(SETTING)
        + "=false. Nothing was changed.";
  }
}
