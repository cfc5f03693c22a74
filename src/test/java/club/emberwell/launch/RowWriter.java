package club.emberwell.launch;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Map;

/**
 * A process of its own that keeps a database and writes one row per transaction; it prints a number
 * only after its commit was answered. Arguments: folder, programs, settings ({@code durable} or
 * {@code forgetful}).
 */
final class RowWriter {
  private RowWriter() {}

  public static void main(String[] args) throws InterruptedException {
    EmbeddedPostgres server =
        EmbeddedPostgres.start(Path.of(args[0]), Path.of(args[1]), settings(args[2]));
    System.out.println("server " + server.pid());
    long next = 0;
    while (true) {
      try (Connection connection = server.connect("postgres");
          Statement statement = connection.createStatement()) {
        statement.executeUpdate("CREATE TABLE IF NOT EXISTS kept (n bigint NOT NULL)");
        while (true) {
          next++;
          statement.executeUpdate("INSERT INTO kept VALUES (" + next + ")");
          System.out.println("kept " + next);
        }
      } catch (SQLException e) {
        Thread.sleep(50);
      }
    }
  }

  static Map<String, String> settings(String name) {
    Map<String, String> settings = PostgresSettings.durable();
    if (name.equals("forgetful")) {
      settings.put("synchronous_commit", "off");
      settings.put("wal_writer_delay", "10s");
    }
    return settings;
  }
}
