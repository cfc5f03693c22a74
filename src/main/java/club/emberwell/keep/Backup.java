package club.emberwell.keep;

import club.emberwell.keep.ArchiveWriter.Written;
import club.emberwell.keep.KeepRefused.Why;
import club.emberwell.keep.Manifest.Made;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.text.Normalizer;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.BiFunction;
import java.util.function.Consumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.postgresql.PGConnection;
import org.postgresql.copy.CopyManager;

/**
 * Writes all that a club is into one archive, while its server runs: every table in one snapshot,
 * so pictures too, and the files of the home that cannot be made again.
 */
public final class Backup {
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("yyyyMMdd'T'HHmmss'Z'").withZone(ZoneOffset.UTC);
  private static final Pattern NAME =
      Pattern.compile("emberwell-[a-z0-9-]+-(\\d{8}T\\d{6}Z)\\.zip");
  private static final String CLUB = "SELECT value FROM club_option WHERE key = 'club-name'";

  private final DatabaseLogin database;
  private final String program;
  private final Map<String, Path> files;
  private final Consumer<String> progress;

  /**
   * A backup to make.
   *
   * @param program the version of this program
   * @param files of the home, by their names in the archive; those that are missing are left out
   * @param progress is told what was kept, line by line
   */
  public Backup(
      DatabaseLogin database, String program, Map<String, Path> files, Consumer<String> progress) {
    this.database = database;
    this.program = program;
    this.files = new TreeMap<>(files);
    this.progress = progress;
  }

  /** An archive that was written. */
  public record Done(Path file, Manifest manifest) {}

  /**
   * Writes an archive under a name that tells club and time.
   *
   * @throws KeepRefused where it cannot be written; then there is none
   */
  public Done into(Path folder) {
    return into(folder, BackupCause.BY_HAND);
  }

  /** The same, saying why. */
  public Done into(Path folder, BackupCause cause) {
    return make(cause, (club, at) -> folder.resolve(name(club, at)));
  }

  /**
   * Refuses where a folder has no room for one.
   *
   * @throws KeepRefused then
   */
  void requireRoom(Path folder) {
    try (Connection connection = database.connect()) {
      Room.require(folder, connection);
    } catch (SQLException e) {
      throw unreadable(e);
    }
  }

  /** Writes an archive of a given name; one that is there is replaced when all is written. */
  public Done to(Path file) {
    return make(BackupCause.BY_HAND, (club, at) -> file);
  }

  private Done make(BackupCause cause, BiFunction<String, Instant, Path> place) {
    Instant now = Instant.now().truncatedTo(ChronoUnit.SECONDS);
    try (Connection connection = database.connect()) {
      snapshot(connection);
      int schema = requireKnown(SchemaVersion.appliedTo(connection));
      String club = text(connection, CLUB);
      Path file = place.apply(club, now);
      Made made =
          new Made(
              program,
              schema,
              club,
              connection.getMetaData().getDatabaseProductVersion(),
              cause.code());
      return new Done(file, write(connection, file, made, now));
    } catch (SQLException e) {
      throw unreadable(e);
    }
  }

  private static KeepRefused unreadable(SQLException e) {
    return new KeepRefused(
        Why.DATABASE,
        "The database cannot be read: " + e.getMessage() + "; no backup was made.",
        e);
  }

  /** How an archive of a club is called. */
  static String name(String club, Instant at) {
    String plain =
        Normalizer.normalize(club, Normalizer.Form.NFD)
            .toLowerCase(Locale.ROOT)
            .replaceAll("\\p{M}", "")
            .replaceAll("[^a-z0-9]+", "-")
            .replaceAll("^-|-$", "");
    String called = plain.isEmpty() ? "club" : plain.substring(0, Math.min(plain.length(), 40));
    return "emberwell-" + called + "-" + TIME.format(at) + ".zip";
  }

  private static void snapshot(Connection connection) throws SQLException {
    connection.setAutoCommit(false);
    connection.setReadOnly(true);
    connection.setTransactionIsolation(Connection.TRANSACTION_REPEATABLE_READ);
  }

  /** Whether a file is called as an archive is. */
  static boolean isName(String name) {
    return NAME.matcher(name).matches();
  }

  /** The time in the name of an archive. */
  static String time(Path file) {
    Matcher name = NAME.matcher(file.getFileName().toString());
    return name.matches() ? name.group(1) : "";
  }

  private static int requireKnown(int schema) {
    if (schema == 0) {
      throw new KeepRefused(
          Why.DATABASE, "The database is empty: there is nothing to keep, so no backup was made.");
    }
    if (schema > SchemaVersion.known()) {
      throw new KeepRefused(
          Why.NEWER,
          "The database has tables of version "
              + schema
              + ", this program knows only version "
              + SchemaVersion.known()
              + ": use a newer program; no backup was made.");
    }
    return schema;
  }

  private Manifest write(Connection connection, Path file, Made made, Instant now)
      throws SQLException {
    try {
      Files.createDirectories(file.toAbsolutePath().getParent());
      try (ArchiveWriter archive = ArchiveWriter.begin(file)) {
        Shape shape = Shape.of(connection);
        List<Manifest.Table> tables = tables(connection, shape, archive);
        // after the rows: a number given out meanwhile does no harm, one too low would
        List<Manifest.Sequence> sequences = sequences(connection, shape);
        Manifest manifest =
            new Manifest(Manifest.FORMAT, made, now, tables, sequences, homeFiles(archive));
        archive.finish(manifest);
        return manifest;
      }
    } catch (IOException e) {
      throw new KeepRefused(
          Why.FILE, "The backup " + file + " cannot be written (" + e + "); there is none.", e);
    }
  }

  private List<Manifest.Table> tables(Connection connection, Shape shape, ArchiveWriter archive)
      throws IOException, SQLException {
    CopyManager copies = connection.unwrap(PGConnection.class).getCopyAPI();
    List<Manifest.Table> tables = new ArrayList<>();
    for (Shape.Table table : shape.tables()) {
      Manifest.Table kept = new Manifest.Table(table.name(), table.columns(), 0, 0, "");
      long[] rows = new long[1];
      Written written =
          archive.add(kept.member(), out -> rows[0] = copies.copyOut(table.copyOut(), out));
      tables.add(
          new Manifest.Table(
              table.name(), table.columns(), rows[0], written.bytes(), written.sha256()));
      progress.accept("%s: %,d rows".formatted(table.name(), rows[0]));
    }
    return tables;
  }

  private static List<Manifest.Sequence> sequences(Connection connection, Shape shape)
      throws SQLException {
    List<Manifest.Sequence> sequences = new ArrayList<>();
    for (Shape.Sequence sequence : shape.sequences()) {
      String select =
          "SELECT last_value, is_called FROM %s".formatted(Names.quoted(sequence.name()));
      try (Statement statement = connection.createStatement();
          ResultSet row = statement.executeQuery(select)) {
        row.next();
        sequences.add(new Manifest.Sequence(sequence.name(), row.getLong(1), row.getBoolean(2)));
      }
    }
    return sequences;
  }

  private List<Manifest.HomeFile> homeFiles(ArchiveWriter archive)
      throws IOException, SQLException {
    List<Manifest.HomeFile> kept = new ArrayList<>();
    for (Map.Entry<String, Path> file : files.entrySet()) {
      if (Files.isRegularFile(file.getValue())) {
        Manifest.HomeFile entry = new Manifest.HomeFile(file.getKey(), 0, "");
        Written written = archive.add(entry.member(), out -> Files.copy(file.getValue(), out));
        kept.add(new Manifest.HomeFile(file.getKey(), written.bytes(), written.sha256()));
      }
    }
    return kept;
  }

  private static String text(Connection connection, String select) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery(select)) {
      return row.next() ? row.getString(1) : "";
    }
  }
}
