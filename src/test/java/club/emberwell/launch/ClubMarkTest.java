package club.emberwell.launch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** Which databases the program starts on, up to where it would start; each refusal leaves all. */
@ExtendWith(OnACommandLine.class)
class ClubMarkTest {
  private static final UUID OURS = UUID.fromString("6f1c0f58-0c1c-4a5f-9b53-0d8a0d5b8f01");
  private static final UUID OTHERS = UUID.fromString("6f1c0f58-0c1c-4a5f-9b53-0d8a0d5b8f02");

  /** All there is in the database, as PostgreSQL itself writes it out. */
  private static final String EVERYTHING =
      """
      SELECT md5(database_to_xml_and_xmlschema(true, false, '')::text)
      """;

  @TempDir Path home;

  private final StringWriter said = new StringWriter();
  private String url;
  private Connection connection;

  @BeforeEach
  void makeDatabase() throws SQLException {
    TestServer server = TestServer.shared();
    url = server.jdbcUrl(server.freshDatabase());
    connection = DriverManager.getConnection(url, EmbeddedPostgres.USER, server.password());
  }

  @AfterEach
  void close() throws SQLException {
    connection.close();
  }

  private int start(String... words) {
    Map<String, String> environment =
        Map.of(
            "EMBERWELL_DATABASE_URL",
            url,
            "EMBERWELL_DATABASE_USER",
            EmbeddedPostgres.USER,
            "EMBERWELL_DATABASE_PASSWORD",
            TestServer.shared().password());
    return start(environment, words);
  }

  private int start(Map<String, String> environment, String... words) {
    String[] line = new String[words.length + 2];
    System.arraycopy(words, 0, line, 2, words.length);
    line[0] = "--home=" + home;
    line[1] = "--port=0";
    return Main.commandLine(environment).setErr(new PrintWriter(said, true)).execute(line);
  }

  private String ask(String sql) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery(sql)) {
      row.next();
      return row.getString(1);
    }
  }

  /** Tables of a version, without what else there would be. */
  private void tables(int version) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      statement.execute(
          """
          CREATE TABLE flyway_schema_history (version text, success boolean);
          CREATE TABLE club_mark (only_row boolean PRIMARY KEY DEFAULT true, club uuid NOT NULL,
            since timestamptz NOT NULL DEFAULT now());
          CREATE TABLE kept (what text); INSERT INTO kept VALUES ('a report')
          """);
      statement.execute("INSERT INTO flyway_schema_history VALUES ('" + version + "', true)");
    }
  }

  private void markHome() throws IOException {
    new ClubMark(OURS, "jdbc:postgresql://db.example/club", "https://club.example").keepIn(home);
  }

  private void assertRefusal(ExitCode code, int got, String... words) throws SQLException {
    assertEquals(code.number(), got, said.toString());
    assertEquals(1, said.toString().lines().count(), said.toString());
    for (String each : words) {
      assertTrue(said.toString().contains(each), said.toString());
    }
  }

  @Test
  void aMarkIsKeptInTheHomeForItsOwnerAlone() throws IOException {
    markHome();
    ClubMark read = ClubMark.inHome(home).orElseThrow();
    assertEquals(OURS, read.club());
    assertEquals("jdbc:postgresql://db.example/club", read.database());
    assertEquals("https://club.example", read.publicUrl());
    assertEquals(
        "rw-------",
        PosixFilePermissions.toString(Files.getPosixFilePermissions(home.resolve("club-id"))));
  }

  @Test
  void theFirstNodeMarksTheDatabaseAndARestoreMayMarkItAnew() throws SQLException {
    assertEquals(Optional.empty(), ClubMark.in(connection));
    tables(1);
    assertEquals(Optional.empty(), ClubMark.in(connection));
    assertEquals(OURS, ClubMark.settle(connection, OURS));
    assertEquals(OURS, ClubMark.settle(connection, OTHERS));
    ClubMark.put(connection, OTHERS);
    assertEquals(Optional.of(OTHERS), ClubMark.in(connection));
  }

  @Test
  void tablesOfANewerProgramAreLeftAsTheyAre() throws SQLException {
    tables(9999);
    String before = ask(EVERYTHING);
    assertRefusal(ExitCode.NEWER_SCHEMA, start(), "tables of version 9999", "nothing was changed");
    assertEquals(before, ask(EVERYTHING));
    assertFalse(Files.exists(home.resolve("club-id")));
  }

  @Test
  void anEmptyDatabaseBesideAMarkedHomeIsNoNewClub() throws Exception {
    markHome();
    String before = ask(EVERYTHING);
    assertRefusal(
        ExitCode.OTHER_CLUB,
        start(),
        OURS.toString(),
        "last in jdbc:postgresql://db.example/club",
        "is empty",
        "restore",
        "--as-new");
    assertEquals(before, ask(EVERYTHING));
    assertEquals(OURS, ClubMark.inHome(home).orElseThrow().club());
  }

  @Test
  void anotherClubsDatabaseBesideAMarkedHomeIsRefused() throws Exception {
    markHome();
    tables(1);
    ClubMark.put(connection, OTHERS);
    String before = ask(EVERYTHING);
    assertRefusal(
        ExitCode.OTHER_CLUB, start(), OURS.toString(), "another club, " + OTHERS, "--as-new");
    assertEquals(before, ask(EVERYTHING));
  }

  @Test
  void aMarkedHomeWhoseBuiltInDatabaseIsGoneIsNoNewClub() throws Exception {
    markHome();
    assertRefusal(
        ExitCode.OTHER_CLUB, start(Map.of()), OURS.toString(), "no built-in database", "--as-new");
    assertFalse(Files.exists(home.resolve("postgres")));
  }

  @Test
  void aMarkThatCannotBeReadIsNotTakenForNone() throws Exception {
    Files.writeString(home.resolve("club-id"), "club=nonsense\n");
    assertRefusal(ExitCode.OTHER_CLUB, start(), home.resolve("club-id").toString(), "--as-new");
  }

  @Test
  void theOwnAndAnOlderUnmarkedDatabaseFit() throws Exception {
    markHome();
    ClubMark mark = ClubMark.inHome(home).orElseThrow();
    tables(1);
    mark.requireIn(connection, home);
    ClubMark.put(connection, OURS);
    mark.requireIn(connection, home);
  }
}
