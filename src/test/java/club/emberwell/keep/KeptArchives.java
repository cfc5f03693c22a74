package club.emberwell.keep;

import club.emberwell.launch.TestServer;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/** Backups that earlier versions of the program wrote, and databases to bring them back to. */
final class KeptArchives {
  private static final Path FOLDER = Path.of("src/test/resources/kept");
  static final Restore.Wishes PLAIN = new Restore.Wishes(false, false, List.of());

  private static String template;

  private KeptArchives() {}

  static List<Path> all() {
    try (Stream<Path> files = Files.list(FOLDER)) {
      // schema-9.zip before schema-10.zip
      return files
          .filter(file -> file.toString().endsWith(".zip"))
          .sorted(
              Comparator.comparing((Path file) -> file.toString().length()).thenComparing(f -> f))
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static Path newest() {
    List<Path> all = all();
    return all.get(all.size() - 1);
  }

  /** An empty database. */
  static DatabaseLogin empty() {
    return database(TestServer.shared().freshDatabase());
  }

  /** The newest archive in a database of its own: restored once, then copied. */
  static DatabaseLogin restored() throws SQLException {
    TestServer server = TestServer.shared();
    if (template == null) {
      template = server.freshDatabase();
      restore(newest(), database(template), PLAIN);
    }
    String name = server.freshDatabase();
    run(database("postgres"), "drop database " + name);
    run(database("postgres"), "create database %s template %s".formatted(name, template));
    return database(name);
  }

  private static DatabaseLogin database(String name) {
    TestServer server = TestServer.shared();
    return new DatabaseLogin(server.jdbcUrl(name), "emberwell", server.password());
  }

  static void restore(Path file, DatabaseLogin database, Restore.Wishes wishes) {
    try (Archive archive = Archive.open(file)) {
      new Restore(database, wishes, line -> {}).from(archive);
    }
  }

  static long number(DatabaseLogin database, String select) throws SQLException {
    try (Connection connection = database.connect();
        Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery(select)) {
      row.next();
      return row.getLong(1);
    }
  }

  static void run(DatabaseLogin database, String sql) throws SQLException {
    try (Connection connection = database.connect();
        Statement statement = connection.createStatement()) {
      statement.execute(sql);
    }
  }

  /** As the kernel ends the connections of a killed process. */
  static void endAll(DatabaseLogin database) {
    try (Connection connection = database.connect();
        Statement statement = connection.createStatement()) {
      statement.execute(
          """
          select pg_terminate_backend(pid, 5000) from pg_stat_activity
           where datname = current_database() and pid <> pg_backend_pid()
          """);
    } catch (SQLException e) {
      throw new IllegalStateException(e);
    }
  }
}
