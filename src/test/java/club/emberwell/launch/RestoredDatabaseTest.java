package club.emberwell.launch;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Whatever an operator does to the database behind the packaged program, with the tools that come
 * with PostgreSQL: afterwards it finds what is stored and nothing else, having built its index
 * once. Each time a report is posted after the dump, so the restored club never had it.
 */
@Tag("packaged")
@Tag("slow")
class RestoredDatabaseTest {
  private static final String CLUB = "club";
  private static Path folder;
  private static DebianPostgres postgres;
  private static PostgresTools server;

  private final List<AutoCloseable> open = new ArrayList<>();
  private Path home;
  private Path otherHome;
  private Path dump;

  @BeforeAll
  static void startServer() throws Exception {
    folder = Files.createTempDirectory("emberwell-restored-");
    Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwxrwxrwx"));
    postgres = DebianPostgres.fresh(folder.resolve("postgres"), List.of("fsync=off"));
    server = new PostgresTools(postgres);
  }

  @AfterAll
  static void stopServer() throws Exception {
    postgres.close();
    PostgresBinaries.deleteTree(folder);
  }

  @BeforeEach
  void begin() throws IOException {
    server.create(CLUB);
    Path own = Files.createTempDirectory(folder, "test");
    home = own.resolve("home");
    otherHome = own.resolve("other-home");
    dump = own.resolve("dump.sql");
  }

  @AfterEach
  void end() throws Exception {
    for (AutoCloseable each : open) {
      each.close();
    }
    server.drop(CLUB);
  }

  private RunningClub start(PostgresTools at, Path in) throws Exception {
    RunningClub club = RunningClub.start(at, CLUB, in);
    open.add(0, club);
    return club;
  }

  private RunningClub startWithReports() throws Exception {
    RunningClub club = start(server, home);
    club.post("first");
    club.post("second");
    return club;
  }

  private static void assertOnce(RunningClub club) throws IOException {
    assertEquals(1, club.newHistories(), club::log);
    assertEquals(1, club.newIndexes(), club::log);
  }

  @Test
  void anOlderDumpInPlaceWhileTheServerIsDown() throws Exception {
    RunningClub club = startWithReports();
    server.dump(CLUB, dump);
    String lost = club.post("after the dump");
    String copy = club.copied();
    club.close();
    server.drop(CLUB);
    server.create(CLUB);
    server.restore(PostgresTools.OWNER, CLUB, dump);
    RunningClub again = start(server, home);
    again.agrees(lost);
    assertOnce(again);
    assertEquals(410, again.statusOfCopy(copy), "a copy is told to begin anew");
  }

  @Test
  void anOlderDumpInPlaceWhileOneNodeRunsAndAnotherIsDown() throws Exception {
    RunningClub club = startWithReports();
    RunningClub other = start(server, otherHome);
    server.dump(CLUB, dump, "--clean", "--if-exists");
    String lost = club.post("after the dump");
    other.close();
    club.count();
    server.restore(PostgresTools.OWNER, CLUB, dump);
    club.agrees(lost);
    assertOnce(club);
    RunningClub back = start(server, otherHome);
    back.agrees(lost);
    assertEquals(0, back.newHistories(), "the first node has begun it");
    assertEquals(1, back.newIndexes());
    assertOnce(club);
  }

  @Test
  void rowsAloneArePutBackWhileTheServerRuns() throws Exception {
    RunningClub club = startWithReports();
    server.dump(CLUB, dump, "--data-only", "--disable-triggers");
    String lost = club.post("after the dump");
    club.count();
    String tables =
        server.ask(CLUB, "select string_agg(relid::regclass::text, ',') from pg_stat_user_tables");
    Path all = home.resolve("rows.sql");
    Files.writeString(
        all,
        "begin; set session_replication_role = replica; truncate %s;\n%s\ncommit;\n"
            .formatted(tables, Files.readString(dump)));
    server.restore(PostgresTools.ADMIN, CLUB, all);
    club.agrees(lost);
    assertOnce(club);
  }

  @Test
  void aCopyOfTheDatabaseTakesItsName() throws Exception {
    RunningClub club = startWithReports();
    alone("create database yesterday template club owner club");
    String lost = club.post("after the copy");
    club.count();
    alone("alter database club rename to broken; alter database yesterday rename to club");
    club.agrees(lost);
    assertOnce(club);
    server.drop("broken");
  }

  /** Does something to the database that allows nobody in it. */
  private static void alone(String sql) throws Exception {
    server.admin("alter database club allow_connections false");
    server.admin("select pg_terminate_backend(pid) from pg_stat_activity where datname = 'club'");
    for (String each : sql.split("; ")) {
      server.admin(each);
    }
    server.admin("update pg_database set datallowconn = true where datname in ('club', 'broken')");
  }

  @Test
  void anOldClubMovesToAnotherServerWhoseTransactionsAreFewer() throws Exception {
    RunningClub club = startWithReports();
    String trim =
        """
        with last as (select xid::text::bigint as x, seq from change_row order by 1 desc, 2 desc limit 1)
        update history_epoch set trimmed_xid = x, trimmed_seq = last.seq from last;
        delete from change_row where seq < (select trimmed_seq from history_epoch)""";
    Path many = home.resolve("many.sql");
    Files.writeString(many, "select pg_current_xact_id();\n".repeat(3000));
    server.restore(PostgresTools.OWNER, CLUB, many);
    club.post("newer");
    server.ask(CLUB, trim);
    server.dump(CLUB, dump);
    String lost = club.post("after the dump");
    String copy = club.copied();
    club.close();
    DebianPostgres elsewhere = DebianPostgres.fresh(folder.resolve("elsewhere"), List.of());
    open.add(elsewhere);
    PostgresTools other = new PostgresTools(elsewhere);
    other.create(CLUB);
    other.restore(PostgresTools.OWNER, CLUB, dump);
    RunningClub moved = start(other, home);
    moved.agrees(lost);
    assertOnce(moved);
    assertEquals(410, moved.statusOfCopy(copy), "a copy is told to begin anew");
  }

  @Test
  void anIndexThatIsDeletedAndOneOfAnotherNode() throws Exception {
    RunningClub club = startWithReports();
    server.dump(CLUB, dump, "--clean", "--if-exists");
    String lost = club.post("after the dump");
    club.close();
    copy(home.resolve("index"), otherHome.resolve("index"));
    server.restore(PostgresTools.OWNER, CLUB, dump);
    PostgresBinaries.deleteTree(home.resolve("index"));
    RunningClub without = start(server, home);
    without.agrees(lost);
    assertOnce(without);
    RunningClub node = start(server, otherHome);
    node.agrees(lost);
    assertEquals(0, node.newHistories());
    assertEquals(1, node.newIndexes());
  }

  private static void copy(Path from, Path to) throws IOException {
    try (Stream<Path> all = Files.walk(from)) {
      for (Path each : (Iterable<Path>) all::iterator) {
        Path target = to.resolve(from.relativize(each));
        if (Files.isDirectory(each)) {
          Files.createDirectories(target);
        } else {
          Files.copy(each, target);
        }
      }
    }
  }
}
