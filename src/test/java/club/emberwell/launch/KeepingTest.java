package club.emberwell.launch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import club.emberwell.keep.Archive;
import club.emberwell.keep.KeepRefused;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** Backups as an operator meets them: which database, which files, what is refused. */
@ExtendWith(OnACommandLine.class)
class KeepingTest {
  private static final Path KEPT = Path.of("src/test/resources/kept/schema-20.zip");
  private static final String KEY = "data-signing-key.pem";

  private final List<String> said = new ArrayList<>();
  private Path home;

  @BeforeEach
  void makeHome() throws IOException {
    home = Files.createTempDirectory("emberwell-home-");
    Files.setPosixFilePermissions(home, PosixFilePermissions.fromString("rwxr-xr-x"));
  }

  @AfterEach
  void removeHome() throws IOException {
    PostgresBinaries.deleteTree(home);
  }

  private Keeping builtIn() {
    return new Keeping(new Given(Map.of()), home, said::add);
  }

  private Keeping at(String url, String user, String password) {
    return new Keeping(
        new Given(
            Map.of(
                "EMBERWELL_DATABASE_URL", url,
                "EMBERWELL_DATABASE_USER", user,
                "EMBERWELL_DATABASE_PASSWORD", password)),
        home,
        said::add);
  }

  /** A role that is no superuser, with a database of its own, on the server of the tests. */
  private static String ownDatabase() throws SQLException {
    TestServer server = TestServer.shared();
    String name = server.freshDatabase();
    try (Connection connection =
            DriverManager.getConnection(
                server.jdbcUrl("postgres"), EmbeddedPostgres.USER, server.password());
        Statement statement = connection.createStatement()) {
      statement.execute("CREATE ROLE club_" + name + " LOGIN NOSUPERUSER PASSWORD 'p'");
      statement.execute("ALTER DATABASE %s OWNER TO club_%s".formatted(name, name));
    }
    return name;
  }

  private Keeping atOwn(String name) {
    return at(TestServer.shared().jdbcUrl(name), "club_" + name, "p");
  }

  private static String text(String url, String user, String password, String select)
      throws SQLException {
    try (Connection connection = DriverManager.getConnection(url, user, password);
        Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery(select)) {
      row.next();
      return row.getString(1);
    }
  }

  @Test
  void theBuiltInDatabaseIsKeptBroughtBackAndMoved() throws Exception {
    LaunchException none = assertThrows(LaunchException.class, () -> builtIn().backup(null));
    assertEquals(ExitCode.NO_DATABASE, none.exitCode());
    builtIn().restore(KEPT, false, false, false);
    assertEquals("a key\n", Files.readString(home.resolve(KEY)));
    assertEquals(
        "rw-------",
        PosixFilePermissions.toString(Files.getPosixFilePermissions(home.resolve(KEY))));

    Path file = builtIn().backup(null).file();
    assertEquals(home.resolve("backups"), file.getParent());
    builtIn().verify(file, false);

    KeepRefused there =
        assertThrows(KeepRefused.class, () -> builtIn().restore(file, false, false, false));
    assertEquals(ExitCode.CLUB_IS_THERE, ExitCode.of(there.why()));
    Files.writeString(home.resolve(KEY), "another key\n");
    builtIn().restore(file, true, false, false);
    assertEquals("a key\n", Files.readString(home.resolve(KEY)));
    assertEquals("another key\n", Files.readString(home.resolve(KEY + ".replaced")));
    assertTrue(said.stream().anyMatch(line -> line.startsWith("Kept in ")), said.toString());

    try (Home taken = Home.take(home)) {
      LaunchException running =
          assertThrows(LaunchException.class, () -> builtIn().restore(file, true, false, false));
      assertEquals(ExitCode.HOME_IN_USE, running.exitCode());
      assertTrue(Files.isDirectory(taken.folder()));
    }

    String name = ownDatabase();
    Database target = Database.of(TestServer.shared().jdbcUrl(name), "club_" + name, "p");
    Path old = builtIn().move(target, true);
    assertFalse(ClubDatabase.isBuiltInThere(home));
    assertTrue(Files.exists(old.resolve("data/PG_VERSION")));
    assertEquals("0", text(target.url(), target.user(), "p", "select count(*) from mail_outbox"));
    assertEquals("t", text(target.url(), target.user(), "p", "select count(*) > 10 from report"));
  }

  @Test
  void aClubIsNotMovedOntoAnother() throws Exception {
    String name = ownDatabase();
    atOwn(name).restore(KEPT, false, false, false);
    try (ClubDatabase club = ClubDatabase.builtIn(home)) {
      assertTrue(club.database().builtIn());
    }
    Database target = Database.of(TestServer.shared().jdbcUrl(name), "club_" + name, "p");
    KeepRefused there = assertThrows(KeepRefused.class, () -> builtIn().move(target, false));
    assertEquals(ExitCode.CLUB_IS_THERE, ExitCode.of(there.why()));
    assertTrue(ClubDatabase.isBuiltInThere(home));
  }

  @Test
  void anOwnerOfADatabaseNeedsNoMore() throws Exception {
    String name = ownDatabase();
    Keeping keeping = atOwn(name);
    keeping.restore(KEPT, false, false, false);
    Path place = Files.createDirectory(home.resolve("elsewhere"));
    Path file = keeping.backup(place.resolve("today.zip")).file();
    assertEquals(place.resolve("today.zip"), file);
    assertEquals(place, keeping.backup(place).file().getParent());
    keeping.restore(file, true, true, false);
    keeping.verify(file, false);
    assertFalse(Files.exists(home.resolve("postgres")));
  }

  @Test
  void whoeverMayNotMakeASchemaIsToldWhatToGrant() throws Exception {
    String name = ownDatabase();
    TestServer server = TestServer.shared();
    try (Connection connection =
            DriverManager.getConnection(
                server.jdbcUrl(name), EmbeddedPostgres.USER, server.password());
        Statement statement = connection.createStatement()) {
      statement.execute("ALTER DATABASE %s OWNER TO %s".formatted(name, EmbeddedPostgres.USER));
      statement.execute("GRANT ALL ON SCHEMA public TO club_" + name);
    }
    KeepRefused refused =
        assertThrows(KeepRefused.class, () -> atOwn(name).restore(KEPT, false, false, false));
    assertEquals(ExitCode.NO_DATABASE, ExitCode.of(refused.why()));
    assertTrue(refused.getMessage().contains("GRANT CREATE ON DATABASE"), refused.getMessage());
  }

  @Test
  void olderTablesAreKeptBeforeAStartChangesThem() throws Exception {
    String name = ownDatabase();
    atOwn(name).restore(KEPT, false, false, false);
    Database database = Database.of(TestServer.shared().jdbcUrl(name), "club_" + name, "p");
    try (Connection connection = database.connect(Duration.ofSeconds(5));
        Statement statement = connection.createStatement()) {
      before(Map.of()).keep(database, connection);
      assertFalse(Files.exists(home.resolve("backups")), "nothing is to change");

      statement.executeUpdate("DELETE FROM flyway_schema_history WHERE version::int > 19");
      before(Map.of("EMBERWELL_BACKUP_BEFORE_UPGRADE", "false")).keep(database, connection);
      assertFalse(Files.exists(home.resolve("backups")), "the operator goes without");
      Path file = Files.writeString(home.resolve("file"), "");
      LaunchException nowhere =
          assertThrows(
              LaunchException.class,
              () ->
                  before(Map.of("EMBERWELL_BACKUP_DIR", file.toString()))
                      .keep(database, connection));
      assertTrue(nowhere.getMessage().endsWith("Nothing was changed."), nowhere.getMessage());

      before(Map.of()).keep(database, connection);
      try (Stream<Path> made = Files.list(home.resolve("backups"))) {
        try (Archive archive = Archive.open(made.findFirst().orElseThrow())) {
          assertEquals(19, archive.manifest().made().schema());
          assertEquals("before-upgrade", archive.manifest().made().cause());
        }
      }
    }
  }

  private BeforeUpgrade before(Map<String, String> settings) {
    return new BeforeUpgrade(new Given(settings), home);
  }

  @Test
  void aClubGoesFromPostgres17To15AndBack() throws Exception {
    assumeTrue(OtherPostgres.isThere(), "no PostgreSQL 15 here");
    Path folder = Files.createTempDirectory("emberwell-15-");
    Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwxr-xr-x"));
    try (OtherPostgres fifteen = OtherPostgres.start(folder)) {
      fifteen.run("CREATE ROLE club LOGIN NOSUPERUSER");
      fifteen.run("CREATE DATABASE club OWNER club");
      Keeping there = at(fifteen.url("club"), "club", "");
      there.restore(KEPT, false, false, false);
      assertEquals(
          "15", text(fifteen.url("club"), "club", "", "show server_version").substring(0, 2));
      Path file = there.backup(home).file();
      String name = ownDatabase();
      atOwn(name).restore(file, false, false, false);
      there.verify(file, false);
    } finally {
      PostgresBinaries.deleteTree(folder);
    }
  }
}
