package club.emberwell.launch;

import club.emberwell.keep.SchemaVersion;
import java.io.IOException;
import java.io.Reader;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Optional;
import java.util.Properties;
import java.util.UUID;

/**
 * Which club a home belongs to, as it stands in {@code HOME/club-id}; the database says the same in
 * its table {@code club_mark}. Nodes with a database in common have homes of their own, each with
 * the mark of the one club.
 *
 * @param club what both must say
 * @param database where the club was at the last start, without a password
 * @param publicUrl the address members used then
 */
public record ClubMark(UUID club, String database, String publicUrl) {
  private static final String FILE = "club-id";
  private static final String CLUB = "club";
  private static final String DATABASE = "database";
  private static final String PUBLIC_URL = "public-url";

  /** What stands in a home; empty where it belongs to no club yet. */
  public static Optional<ClubMark> inHome(Path home) {
    Path file = home.resolve(FILE);
    if (!Files.exists(file)) {
      return Optional.empty();
    }
    Properties read = new Properties();
    try (Reader reader = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
      read.load(reader);
      return Optional.of(
          new ClubMark(
              UUID.fromString(read.getProperty(CLUB, "")),
              read.getProperty(DATABASE, ""),
              read.getProperty(PUBLIC_URL, "")));
    } catch (IOException | IllegalArgumentException e) {
      throw new LaunchException(
          ExitCode.OTHER_CLUB,
          file
              + " does not say which club this home belongs to; bring it back from a backup, or"
              + " say --as-new to take the database as it is.",
          e);
    }
  }

  /** Writes this into a home, over what stood there. */
  public void keepIn(Path home) throws IOException {
    Properties written = new Properties();
    written.setProperty(CLUB, club.toString());
    written.setProperty(DATABASE, database);
    written.setProperty(PUBLIC_URL, publicUrl);
    Path half = home.resolve(FILE + ".new");
    Files.deleteIfExists(half);
    Files.createFile(
        half, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
    try (Writer writer = Files.newBufferedWriter(half, StandardCharsets.UTF_8)) {
      written.store(writer, "Which club this home belongs to. Keep it with the home.");
    }
    Files.move(half, home.resolve(FILE), StandardCopyOption.ATOMIC_MOVE);
  }

  /** Lets a home belong to no club. */
  public static void forget(Path home) throws IOException {
    Files.deleteIfExists(home.resolve(FILE));
  }

  /** What a database says; empty where it is empty, or of a time before there were marks. */
  public static Optional<UUID> in(Connection connection) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      try (ResultSet table =
          statement.executeQuery("SELECT to_regclass('club_mark') IS NOT NULL")) {
        table.next();
        if (!table.getBoolean(1)) {
          return Optional.empty();
        }
      }
      try (ResultSet row = statement.executeQuery("SELECT club FROM club_mark")) {
        return row.next() ? Optional.of(row.getObject(1, UUID.class)) : Optional.empty();
      }
    }
  }

  /** Writes a mark into a database, over what stood there: a restore says whose club it is. */
  public static void put(Connection connection, UUID club) throws SQLException {
    run(
        connection,
        """
        INSERT INTO club_mark (club) VALUES (?)
        ON CONFLICT (only_row) DO UPDATE SET club = excluded.club, since = now()
        """,
        club);
  }

  /** The mark of a database, which gets the proposed one where it has none; one node is first. */
  static UUID settle(Connection connection, UUID proposed) throws SQLException {
    run(
        connection,
        """
        INSERT INTO club_mark (club) VALUES (?) ON CONFLICT DO NOTHING
        """,
        proposed);
    return in(connection).orElseThrow();
  }

  private static void run(Connection connection, String sql, UUID club) throws SQLException {
    try (PreparedStatement statement = connection.prepareStatement(sql)) {
      statement.setObject(1, club);
      statement.executeUpdate();
    }
  }

  /**
   * Refuses a database that is not the one of this home: an empty one, or another club's.
   *
   * @throws LaunchException with what was expected and how to go on
   */
  void requireIn(Connection connection, Path home) throws SQLException {
    Optional<UUID> found = in(connection);
    if (SchemaVersion.appliedTo(connection) == 0) {
      throw other(home, "but the database is empty");
    }
    if (found.isPresent() && !found.get().equals(club)) {
      throw other(home, "but the database holds another club, " + found.get());
    }
  }

  /** The refusal of what is there instead. */
  LaunchException other(Path home, String instead) {
    return new LaunchException(
        ExitCode.OTHER_CLUB,
        "The home "
            + home
            + " belongs to the club "
            + club
            + ", last in "
            + database
            + ", "
            + instead
            + "; name or restore its database, or say --as-new to take this one for the home.");
  }
}
