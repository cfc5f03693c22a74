package club.emberwell.launch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.icegreen.greenmail.util.GreenMail;
import com.icegreen.greenmail.util.ServerSetup;
import com.sun.net.httpserver.HttpServer;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Map;
import java.util.UUID;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** The verbs for a club with the built-in database, whose server runs or is stopped. */
@ExtendWith(OnACommandLine.class)
class VerbsOnBuiltInTest {
  @TempDir static Path home;

  private final StringWriter said = new StringWriter();
  private EmbeddedPostgres running;

  @BeforeAll
  static void makeClub() throws Exception {
    try (Home taken = Home.take(home);
        EmbeddedPostgres postgres = taken.postgres()) {
      postgres.createDatabase(EmbeddedPostgres.DATABASE);
      Flyway.configure()
          .dataSource(
              postgres.jdbcUrl(EmbeddedPostgres.DATABASE),
              EmbeddedPostgres.USER,
              postgres.password())
          .load()
          .migrate();
      UUID club = UUID.randomUUID();
      try (Connection connection = postgres.connect(EmbeddedPostgres.DATABASE);
          Statement statement = connection.createStatement()) {
        ClubMark.put(connection, club);
        statement.execute(
            """
            INSERT INTO member (id, handle, role, status)
            VALUES (gen_random_uuid(), 'ashgrove', 'member', 'active');
            UPDATE club_option SET value = 'off' WHERE key = 'local-sign-in'
            """);
      }
      new ClubMark(club, "the built-in database", "https://club.example").keepIn(home);
    }
  }

  @AfterAll
  static void open() throws Exception {
    // the folder is deleted by JUnit, also where the account nobody owned what lies below
    Files.setPosixFilePermissions(home, PosixFilePermissions.fromString("rwx------"));
  }

  @BeforeEach
  void nothing() {
    said.getBuffer().setLength(0);
  }

  @AfterEach
  void stop() {
    if (running != null) {
      running.close();
    }
  }

  /** As the server would have it, in this process. */
  private void run() {
    running = EmbeddedPostgres.start(home.resolve("postgres"));
  }

  private int say(Map<String, String> environment, String... words) {
    PrintWriter out = new PrintWriter(said, true);
    return Main.commandLine(environment).setOut(out).setErr(out).execute(words);
  }

  private String ask(String sql) throws SQLException {
    try (Connection connection = running.connect(EmbeddedPostgres.DATABASE);
        Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery(sql)) {
      row.next();
      return row.getString(1);
    }
  }

  private void assertLink(String publicUrl) throws SQLException {
    String link = said.toString().strip();
    assertTrue(link.matches(publicUrl + "/reset/[A-Za-z0-9_-]{43}"), link);
    String secret = link.substring(link.lastIndexOf('/') + 1);
    assertEquals(
        "1",
        ask(
            "SELECT count(*) FROM once_link WHERE expires_at > now() AND secret_hash = sha256('"
                + secret
                + "')"));
  }

  @Test
  void aLinkIsMadeWhileTheServerIsStopped() throws Exception {
    assertEquals(0, say(Map.of(), "reset-link", "Ashgrove", "--home=" + home), said.toString());
    assertTrue(Postmaster.runningOn(home.toRealPath().resolve("postgres/data")).isEmpty());
    run();
    assertLink("https://club.example");
  }

  @Test
  void aLinkIsMadeBesideTheServerAndGoesToTheAddressThatIsSet() throws Exception {
    run();
    Map<String, String> set = Map.of("EMBERWELL_PUBLIC_URL", "https://moved.example");
    assertEquals(0, say(set, "reset-link", "ashgrove", "--home=" + home), said.toString());
    assertLink("https://moved.example");
  }

  @Test
  void localSignInIsSwitchedOnWhileTheServerIsStopped() throws Exception {
    assertEquals(0, say(Map.of(), "local-sign-in", "--home=" + home), said.toString());
    run();
    assertEquals("on", ask("SELECT value FROM club_option WHERE key = 'local-sign-in'"));
  }

  @Test
  void theDoctorFindsAStoppedClubWellAndChangesNothing() throws Exception {
    assertEquals(0, say(Map.of(), "doctor", "--home=" + home), said.toString());
    String table = said.toString();
    for (String row :
        new String[] {
          "OK    settings",
          "OK    home",
          "OK    database      PostgreSQL 17",
          "OK    clock",
          "OK    collation",
          "OK    checksums",
          "OK    durability",
          "OK    tables",
          "OK    club",
          "OK    rows",
          "OK    mail",
          "WARN  public URL",
          "WARN  index"
        }) {
      assertTrue(table.contains(row), row + " in\n" + table);
    }
    assertTrue(Postmaster.runningOn(home.toRealPath().resolve("postgres/data")).isEmpty());
  }

  @Test
  void theDoctorSeesTheMailServerTheAddressAndWhatIsOpenToOthers() throws Exception {
    run();
    GreenMail mail = new GreenMail(new ServerSetup(0, "127.0.0.1", ServerSetup.PROTOCOL_SMTP));
    HttpServer web = HttpServer.create(new InetSocketAddress("127.0.0.1", 0), 1);
    web.createContext(
        "/",
        exchange -> {
          exchange.sendResponseHeaders(200, -1);
          exchange.close();
        });
    try {
      mail.start();
      web.start();
      Path settings = Files.writeString(home.resolve("emberwell.properties"), "");
      Files.setPosixFilePermissions(settings, PosixFilePermissions.fromString("rw-r--r--"));
      Map<String, String> set =
          Map.of(
              "EMBERWELL_MAIL_HOST",
              "127.0.0.1",
              "EMBERWELL_MAIL_PORT",
              "" + mail.getSmtp().getPort(),
              "EMBERWELL_MAIL_START_TLS",
              "OPTIONAL",
              "EMBERWELL_PUBLIC_URL",
              "http://127.0.0.1:" + web.getAddress().getPort());
      assertEquals(0, say(set, "doctor", "--home=" + home), said.toString());
      String table = said.toString();
      assertTrue(table.contains("OK    mail"), table);
      assertTrue(table.contains("OK    public URL"), table);
      assertTrue(table.contains("WARN  home          " + settings), table);
      assertEquals(0, mail.getReceivedMessages().length);
    } finally {
      Files.deleteIfExists(home.resolve("emberwell.properties"));
      web.stop(0);
      mail.stop();
    }
  }

  @Test
  void theDoctorEndsWithOneWhereSomethingFails() throws Exception {
    run();
    int closed;
    try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      closed = socket.getLocalPort();
    }
    Map<String, String> set =
        Map.of("EMBERWELL_MAIL_HOST", "127.0.0.1", "EMBERWELL_MAIL_PORT", "" + closed);
    assertEquals(1, say(set, "doctor", "--home=" + home), said.toString());
    assertTrue(said.toString().contains("FAIL  mail"), said.toString());
  }

  @Test
  void theDoctorFindsHalvesOfEntriesAndAnotherClub() throws Exception {
    run();
    UUID half = UUID.randomUUID();
    try (Connection connection = running.connect(EmbeddedPostgres.DATABASE);
        Statement statement = connection.createStatement()) {
      statement.execute(
          """
          INSERT INTO entry (id, kind, member_id, state, version, title, created_at, updated_at)
          SELECT '%s', 'lot', id, 'live', 1, 'half', now(), now() FROM member
          """
              .formatted(half));
      ClubMark mark = ClubMark.inHome(home).orElseThrow();
      try {
        ClubMark.put(connection, UUID.randomUUID());
        assertEquals(1, say(Map.of(), "doctor", "--home=" + home), said.toString());
        String table = said.toString();
        assertTrue(table.contains("FAIL  club"), table);
        assertTrue(table.contains("1 entries without what their kind holds"), table);
        assertTrue(table.contains("1 entries whose present version has no history"), table);
      } finally {
        ClubMark.put(connection, mark.club());
        statement.execute("DELETE FROM change_row WHERE entity_id = '" + half + "'");
        statement.execute("DELETE FROM entry WHERE id = '" + half + "'");
      }
    }
  }

  @Test
  void aWrongSettingIsTheDoctorsOnlyFinding() {
    assertEquals(1, say(Map.of("EMBERWELL_MAIL_TLS", "maybe"), "doctor", "--home=" + home));
    assertTrue(said.toString().startsWith("FAIL  settings"), said.toString());
    assertFalse(said.toString().contains("database"), said.toString());
  }
}
