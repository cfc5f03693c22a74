package club.emberwell.launch;

import club.emberwell.keep.BackupCause;
import club.emberwell.keep.KeepRefused;
import club.emberwell.keep.Room;
import club.emberwell.keep.SchemaVersion;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import org.jboss.logging.Logger;

/** A backup before a start changes the tables: the way back to the program of before. */
final class BeforeUpgrade {
  private static final Logger LOG = Logger.getLogger(BeforeUpgrade.class);
  private static final String SETTING = "emberwell.backup.before-upgrade";

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
    LOG.infof(
        "The tables go from version %d to %d; a backup is made first",
        applied, SchemaVersion.known());
    try {
      Room.require(keeping.folder(), connection);
      Path file =
          keeping.of(database.kept()).into(keeping.folder(), BackupCause.BEFORE_UPGRADE).file();
      LOG.infof("The backup is %s", file);
    } catch (KeepRefused e) {
      throw new LaunchException(ExitCode.of(e.why()), refusal(e.getMessage()), e);
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
