package club.emberwell.launch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class EmbeddedPostgresTest {
  private static final Path CACHE = Path.of("target", "test-postgres").toAbsolutePath();

  @TempDir Path folder;

  @Test
  void theServerIsDurableAndKeepsStrangersOut() throws Exception {
    try (EmbeddedPostgres server =
        EmbeddedPostgres.start(folder, CACHE, PostgresSettings.durable())) {
      server.createDatabase("club");
      server.createDatabase("club");
      assertEquals("on", shown(server, "fsync"));
      assertEquals("on", shown(server, "synchronous_commit"));
      assertEquals("on", shown(server, "full_page_writes"));
      assertEquals("on", shown(server, "data_checksums"));
      assertEquals("UTF8", shown(server, "server_encoding"));
      assertEquals("127.0.0.1", shown(server, "listen_addresses"));
      SQLException refused =
          assertThrows(
              SQLException.class,
              () -> DriverManager.getConnection(server.jdbcUrl("club"), "emberwell", "guess"));
      assertEquals("28P01", refused.getSQLState());
    }
    assertEquals(
        "rw-------",
        PosixFilePermissions.toString(Files.getPosixFilePermissions(folder.resolve("password"))));
  }

  @Test
  void dataOfAnotherMajorVersionAreLeftAlone() throws IOException {
    EmbeddedPostgres.start(folder, CACHE, PostgresSettings.forTests()).close();
    Files.writeString(folder.resolve("data/PG_VERSION"), "16\n");
    LaunchException refused =
        assertThrows(
            LaunchException.class,
            () -> EmbeddedPostgres.start(folder, CACHE, PostgresSettings.forTests()));
    assertEquals(ExitCode.NO_DATABASE, refused.exitCode());
  }

  @Test
  void rootWithoutUserNamespacesRunsItAsNobody() throws Exception {
    assumeTrue(Account.isRoot());
    Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwx--x--x"));
    // the programs must be where that account can reach them
    try (EmbeddedPostgres server =
        EmbeddedPostgres.start(folder, folder, PostgresSettings.forTests(), Account.nobody())) {
      assertEquals("17", shown(server, "server_version").substring(0, 2));
      assertEquals(
          65534, Files.getAttribute(Path.of("/proc", Long.toString(server.pid())), "unix:uid"));
    }
  }

  private static String shown(EmbeddedPostgres server, String setting) throws SQLException {
    try (Connection connection = server.connect("postgres");
        Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery("SHOW " + setting)) {
      row.next();
      return row.getString(1);
    }
  }
}
