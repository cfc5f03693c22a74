package club.emberwell.launch;

import club.emberwell.keep.SchemaVersion;
import java.sql.Connection;
import java.sql.SQLException;

/** What a start asks of the tables that are there. */
final class Schema {
  private Schema() {}

  /** Refuses a database of a newer program, untouched. */
  static void requireNotNewer(Connection connection) throws SQLException {
    int applied = SchemaVersion.appliedTo(connection);
    int known = SchemaVersion.known();
    if (applied > known) {
      throw new LaunchException(
          ExitCode.NEWER_SCHEMA,
          "The database has tables of version "
              + applied
              + ", this program knows only version "
              + known
              + "; nothing was changed: start a newer program.");
    }
  }

  /** Refuses tables of any other version: statements of this program fit only its own. */
  static void requireSame(Connection connection) throws SQLException {
    requireNotNewer(connection);
    int applied = SchemaVersion.appliedTo(connection);
    if (applied < SchemaVersion.known()) {
      throw new LaunchException(
          ExitCode.NO_DATABASE,
          "The database has tables of version "
              + applied
              + ", this program needs version "
              + SchemaVersion.known()
              + "; start the server once, which brings them up.");
    }
  }
}
