package club.emberwell.keep;

import club.emberwell.keep.KeepRefused.Why;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.function.Consumer;
import org.apache.commons.codec.binary.Hex;
import org.apache.commons.codec.digest.DigestUtils;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import org.postgresql.PGConnection;

/**
 * A schema beside the club's own, in which an archive is laid out: what is in the club's own stays
 * untouched meanwhile. It goes when this is closed; what a killed process left goes with the next.
 */
final class Scratch implements AutoCloseable {
  /** Its name, in the club's database. */
  static final String NAME = "emberwell_scratch";

  /** Held while there is one: any number that nobody else takes. */
  private static final String LOCK = "SELECT pg_try_advisory_lock(7310421903345)";

  private static final String KEYS =
      """
      SELECT format('ALTER TABLE %s DROP CONSTRAINT %I', conrelid::regclass, conname),
             format('ALTER TABLE %s ADD CONSTRAINT %I %s', conrelid::regclass, conname,
                    pg_get_constraintdef(oid))
        FROM pg_constraint
       WHERE contype = 'f' AND connamespace = current_schema()::regnamespace
       ORDER BY conrelid::regclass::text, conname
      """;

  private final DatabaseLogin database;
  private final Connection holder;
  private final Consumer<String> progress;

  private Scratch(DatabaseLogin database, Connection holder, Consumer<String> progress) {
    this.database = database;
    this.holder = holder;
    this.progress = progress;
  }

  /** Makes an empty one; what another process left behind goes. */
  static Scratch in(DatabaseLogin database, Consumer<String> progress) throws SQLException {
    Connection holder = database.connect();
    try (Statement statement = holder.createStatement()) {
      try (ResultSet taken = statement.executeQuery(LOCK)) {
        taken.next();
        if (!taken.getBoolean(1)) {
          throw new KeepRefused(
              Why.IN_USE, "Another restore or check is under way in this database.");
        }
      }
      Scratch scratch = new Scratch(database, holder, progress);
      scratch.drop();
      statement.execute("CREATE SCHEMA " + NAME);
      return scratch;
    } catch (SQLException | KeepRefused e) {
      holder.close();
      throw e;
    }
  }

  /** A connection that sees this schema alone. */
  Connection connect() throws SQLException {
    return database.connect(NAME);
  }

  /**
   * Makes a club of an archive: its tables as they were, its rows, each compared with what was
   * kept, and all of it brought to the version of this program.
   *
   * @return the names of everything that such a club has, before and after
   */
  Belongings layOut(Archive archive) throws SQLException {
    Manifest manifest = archive.manifest();
    if (manifest.made().schema() > SchemaVersion.known()) {
      throw new KeepRefused(
          Why.NEWER,
          "The backup has tables of version %d, this program knows only version %d; nothing was"
                  .formatted(manifest.made().schema(), SchemaVersion.known())
              + " changed: use a newer program.");
    }
    migrate(manifest.made().schema());
    Belongings before = belongings();
    try {
      fill(archive);
      compare(manifest);
    } catch (IOException e) {
      throw new KeepRefused(
          Why.FILE, "The backup " + archive.file() + " cannot be read: " + e.getMessage(), e);
    }
    migrate(SchemaVersion.known());
    return before.and(belongings());
  }

  private Belongings belongings() throws SQLException {
    try (Connection connection = connect()) {
      return Belongings.of(connection);
    }
  }

  /** Brings the tables to a version. */
  private void migrate(int version) {
    try {
      Flyway.configure(Scratch.class.getClassLoader())
          .dataSource(database.source(NAME))
          .defaultSchema(NAME)
          .createSchemas(false)
          .locations("classpath:db/migration")
          .target(Integer.toString(version))
          .load()
          .migrate();
    } catch (FlywayException e) {
      throw new KeepRefused(
          Why.DATABASE,
          "The tables cannot be brought to version " + version + ": " + e.getMessage(),
          e);
    }
  }

  /**
   * Lays out the rows of an archive in tables of its version, in one transaction. Neither triggers
   * nor keys look at rows on their way: the archive has what triggers wrote, and all keys are
   * checked when all rows are there, whatever leads in a circle.
   */
  private void fill(Archive archive) throws SQLException, IOException {
    try (Connection connection = connect()) {
      connection.setAutoCommit(false);
      Shape shape = Shape.of(connection);
      requireAllThere(archive.manifest(), shape);
      List<String> again = new ArrayList<>();
      for (String[] key : pairs(connection, KEYS)) {
        run(connection, key[0]);
        again.add(key[1]);
      }
      for (Shape.Table table : shape.tables()) {
        run(connection, "ALTER TABLE " + Names.quoted(table.name()) + " DISABLE TRIGGER USER");
      }
      run(
          connection,
          "TRUNCATE " + Names.list(shape.tables().stream().map(Shape.Table::name).toList()));
      copyIn(connection, archive);
      for (Manifest.Sequence sequence : archive.manifest().sequences()) {
        set(connection, sequence);
      }
      for (Shape.Table table : shape.tables()) {
        run(connection, "ALTER TABLE " + Names.quoted(table.name()) + " ENABLE TRIGGER USER");
      }
      for (String key : again) {
        run(connection, key);
      }
      connection.commit();
    }
  }

  /**
   * Tables that stood beside the club's own cannot be made: they are left out, and that is said.
   */
  private void requireAllThere(Manifest manifest, Shape shape) {
    TreeSet<String> missing = new TreeSet<>();
    shape.tables().forEach(table -> missing.add(table.name()));
    manifest.tables().forEach(table -> missing.remove(table.name()));
    if (!missing.isEmpty()) {
      throw new KeepRefused(
          Why.DAMAGED, "The backup is not whole: it has no rows of " + String.join(", ", missing));
    }
  }

  private void copyIn(Connection connection, Archive archive) throws SQLException, IOException {
    TreeSet<String> known = new TreeSet<>();
    Shape.of(connection).tables().forEach(table -> known.add(table.name()));
    for (Manifest.Table table : archive.manifest().tables()) {
      if (!known.contains(table.name())) {
        progress.accept(table.name() + ": left out, it is none of this program's tables");
        continue;
      }
      String statement =
          "COPY %s (%s) FROM STDIN"
              .formatted(Names.quoted(table.name()), Names.list(table.columns()));
      try (InputStream in = archive.open(table)) {
        connection.unwrap(PGConnection.class).getCopyAPI().copyIn(statement, in);
      }
      progress.accept("%s: %,d rows".formatted(table.name(), table.rows()));
    }
  }

  private static void set(Connection connection, Manifest.Sequence sequence) throws SQLException {
    try (PreparedStatement set =
        connection.prepareStatement("SELECT setval(cast(? AS regclass), ?, ?)")) {
      set.setString(1, Names.quoted(sequence.name()));
      set.setLong(2, sequence.value());
      set.setBoolean(3, sequence.called());
      set.execute();
    }
  }

  /**
   * Reads every table back and compares it with the archive, byte by byte.
   *
   * @throws KeepRefused where one differs
   */
  private void compare(Manifest manifest) throws SQLException, IOException {
    Map<String, Manifest.Table> kept = new HashMap<>();
    manifest.tables().forEach(table -> kept.put(table.name(), table));
    try (Connection connection = connect()) {
      for (Shape.Table table : Shape.of(connection).tables()) {
        Manifest.Table was = kept.get(table.name());
        String order = new Shape.Table(table.name(), was.columns(), table.place()).copyOut();
        MessageDigest digest = DigestUtils.getSha256Digest();
        OutputStream sink = new DigestOutputStream(OutputStream.nullOutputStream(), digest);
        long rows = connection.unwrap(PGConnection.class).getCopyAPI().copyOut(order, sink);
        String sum = Hex.encodeHexString(digest.digest());
        if (rows != was.rows() || !sum.equals(was.sha256())) {
          throw new KeepRefused(
              Why.DIFFERS,
              "What was restored of %s is not what was kept (%,d rows of %,d)."
                  .formatted(table.name(), rows, was.rows()));
        }
      }
    }
  }

  private static List<String[]> pairs(Connection connection, String select) throws SQLException {
    List<String[]> found = new ArrayList<>();
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery(select)) {
      while (row.next()) {
        found.add(new String[] {row.getString(1), row.getString(2)});
      }
    }
    return found;
  }

  private static void run(Connection connection, String sql) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      statement.execute(sql);
    }
  }

  private void drop() throws SQLException {
    run(holder, "DROP SCHEMA IF EXISTS " + NAME + " CASCADE");
  }

  @Override
  public void close() throws SQLException {
    try (holder) {
      drop();
    }
  }
}
