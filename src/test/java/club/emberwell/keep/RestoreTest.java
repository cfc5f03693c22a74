package club.emberwell.keep;

import static club.emberwell.keep.KeptArchives.PLAIN;
import static club.emberwell.keep.KeptArchives.empty;
import static club.emberwell.keep.KeptArchives.endAll;
import static club.emberwell.keep.KeptArchives.newest;
import static club.emberwell.keep.KeptArchives.number;
import static club.emberwell.keep.KeptArchives.restore;
import static club.emberwell.keep.KeptArchives.restored;
import static club.emberwell.keep.KeptArchives.run;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.keep.KeepRefused.Why;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** A club made of an archive: whole or not at all, and not as if no time had passed. */
class RestoreTest {
  @TempDir Path folder;

  static List<Path> kept() {
    return KeptArchives.all();
  }

  @ParameterizedTest
  @MethodSource("kept")
  void whatEarlierVersionsWroteComesBackInTodaysTables(Path file) throws Exception {
    DatabaseLogin database = empty();
    restore(file, database, PLAIN);
    try (Connection connection = database.connect();
        Archive archive = Archive.open(file)) {
      assertEquals(SchemaVersion.known(), SchemaVersion.appliedTo(connection));
      Map<String, String> now = EveryTable.sums(connection);
      for (String table : List.of("member", "entry", "entry_revision", "report", "photo")) {
        assertEquals(rows(archive, table), Long.parseLong(now.get(table).split(" ")[0]), table);
      }
    }
    assertEquals(
        7,
        number(
            database,
            "select sum(length(picture) + length(thumb)) from photo where picture ="
                + " '\\x00ff5c4e0a'"));
    assertEquals(
        1, number(database, "select count(*) from api_token where label like E'tab\\t, line\\n%'"));
    // and the tables go on by themselves: no number is given out twice
    run(
        database,
        """
        insert into entry (id, kind, member_id, state, version, title, created_at, updated_at)
        select gen_random_uuid(), 'notice', id, 'live', 1, 'New', now(), now()
          from member where status = 'active' limit 1
        """);
    assertEquals(1, number(database, "select count(*) from change_row where entity = 'notice'"));
  }

  private static long rows(Archive archive, String table) {
    return archive.manifest().tables().stream()
        .filter(kept -> kept.name().equals(table))
        .findFirst()
        .orElseThrow()
        .rows();
  }

  @Test
  void nobodyStaysSignedInAndNothingUnderWayGoesOn() throws Exception {
    DatabaseLogin database = restored();
    for (String table : List.of("session", "once_link", "owner_code", "sso_arrival", "sso_state")) {
      assertEquals(0, number(database, "select count(*) from " + table), table);
    }
    assertEquals(1, number(database, "select count(*) from audit where action = 'restore-backup'"));
    assertEquals(0, number(database, "select count(*) from data_package"));
    assertEquals(1, number(database, "select count(*) from data_making where asked_at <= now()"));
    // what members made for their programs stays, and what waits for the mail server
    assertEquals(1, number(database, "select count(*) from api_token where revoked_at is null"));
    assertEquals(1, number(database, "select count(*) from mail_outbox"));
    assertEquals(
        1, number(database, "select count(*) from webhook_delivery where state = 'waiting'"));
  }

  @Test
  void onWishKeysOfProgramsEndAndLettersAreHeldBack() throws Exception {
    DatabaseLogin database = empty();
    restore(newest(), database, new Restore.Wishes(true, true, List.of()));
    assertEquals(0, number(database, "select count(*) from api_token where revoked_at is null"));
    assertEquals(0, number(database, "select count(*) from mail_outbox"));
    assertEquals(
        0, number(database, "select count(*) from webhook_delivery where state = 'waiting'"));
  }

  @Test
  void numbersOfTransactionsOfAnotherServerAreGone() throws Exception {
    DatabaseLogin one = restored();
    DatabaseLogin other = empty();
    restore(newest(), other, PLAIN);
    assertNotEquals(epoch(one), epoch(other));
    assertEquals(
        number(one, "select count(*) from entry where kind = 'report'"),
        number(one, "select count(*) from report_change"));
    try (Connection connection = one.connect();
        Statement statement = connection.createStatement()) {
      List<String> columns = new ArrayList<>();
      try (ResultSet row =
          statement.executeQuery(
              """
              select format('select max(%I::text::numeric) from %I', column_name, table_name)
                from information_schema.columns
               where data_type = 'xid8' and table_schema = current_schema()
              """)) {
        while (row.next()) {
          columns.add(row.getString(1));
        }
      }
      assertTrue(columns.size() >= 4, columns.toString());
      long began = number(one, "select min(xid::text::bigint) from report_change");
      for (String newest : columns) {
        try (ResultSet row = statement.executeQuery(newest)) {
          row.next();
          long xid = row.getLong(1);
          assertTrue(row.wasNull() || xid >= began, newest + " is " + xid + " of before " + began);
        }
      }
    }
  }

  private static String epoch(DatabaseLogin database) throws SQLException {
    try (Connection connection = database.connect();
        Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery("select epoch from history_epoch")) {
      row.next();
      return row.getString(1);
    }
  }

  @Test
  void whoeverLeftSinceIsInTheLedgerOfTheRestoredClub() throws Exception {
    DatabaseLogin database = restored();
    UUID inDatabase = UUID.randomUUID();
    UUID inHome = UUID.randomUUID();
    run(
        database,
        "insert into erasure (member_id, choice, at) values ('%s', 'remove', now())"
            .formatted(inDatabase));
    restore(
        newest(),
        database,
        new Restore.Wishes(false, false, List.of(new Erased(inHome, "keep", Instant.now()))));
    assertEquals(3, number(database, "select count(*) from erasure"));
    assertEquals(
        2,
        number(
            database,
            "select count(*) from erasure where member_id in ('%s', '%s')"
                .formatted(inDatabase, inHome)));
  }

  @Test
  void whoeverIsKilledInTheMiddleLeavesWhatWasThere() throws Exception {
    DatabaseLogin database = restored();
    run(database, "update club_option set value = 'As it was' where key = 'club-name'");
    Map<String, String> before = sums(database);
    AtomicBoolean killed = new AtomicBoolean();
    try (Archive archive = Archive.open(newest())) {
      Restore restore =
          new Restore(
              database,
              PLAIN,
              line -> {
                if (line.startsWith("report:") && killed.compareAndSet(false, true)) {
                  endAll(database);
                }
              });
      KeepRefused said = assertThrows(KeepRefused.class, () -> restore.from(archive));
      assertEquals(Why.DATABASE, said.why());
      assertTrue(killed.get());
    }
    assertEquals(before, sums(database));
    // what it left beside goes with the next
    assertEquals(1, number(database, scratches()));
    restore(newest(), database, PLAIN);
    assertEquals(0, number(database, scratches()));
    assertEquals(0, number(database, "select count(*) from club_option where value = 'As it was'"));
  }

  private static String scratches() {
    return "select count(*) from pg_namespace where nspname = '" + Scratch.NAME + "'";
  }

  @Test
  void aRunningServerIsNotRobbedOfItsTables() throws Exception {
    DatabaseLogin database = restored();
    Properties login = new Properties();
    login.setProperty("user", database.user());
    login.setProperty("password", database.password());
    login.setProperty("ApplicationName", "emberwell");
    Map<String, String> before = sums(database);
    try (Connection server = DriverManager.getConnection(database.url(), login)) {
      assertTrue(server.isValid(5));
      KeepRefused said = assertThrows(KeepRefused.class, () -> restore(newest(), database, PLAIN));
      assertEquals(Why.IN_USE, said.why());
    }
    // one that starts while the archive is laid out
    try (Archive archive = Archive.open(newest())) {
      List<Connection> servers = new ArrayList<>();
      Restore restore =
          new Restore(
              database,
              PLAIN,
              line -> {
                if (servers.isEmpty()) {
                  try {
                    servers.add(DriverManager.getConnection(database.url(), login));
                  } catch (SQLException e) {
                    throw new IllegalStateException(e);
                  }
                }
              });
      assertEquals(Why.IN_USE, assertThrows(KeepRefused.class, () -> restore.from(archive)).why());
      servers.get(0).close();
    }
    assertEquals(before, sums(database));
  }

  @Test
  void twoAtATimeAreOneTooMany() throws Exception {
    DatabaseLogin database = restored();
    try (Scratch first = Scratch.in(database, line -> {})) {
      KeepRefused said = assertThrows(KeepRefused.class, () -> restore(newest(), database, PLAIN));
      assertEquals(Why.IN_USE, said.why());
      first.connect().close();
    }
    restore(newest(), database, PLAIN);
  }

  @Test
  void whatSomebodyElseKeepsBesideStaysAndWhatHangsOnTheTablesIsSaid() throws Exception {
    DatabaseLogin database = restored();
    run(database, "create table of_the_operator as select 42 as answer");
    run(database, "create function of_the_operator() returns int language sql as 'select 43'");
    restore(newest(), database, PLAIN);
    assertEquals(42, number(database, "select answer from of_the_operator"));
    assertEquals(43, number(database, "select of_the_operator()"));

    // it is in a backup, too, and nobody stumbles over it there
    Backup.Done done = new Backup(database, "1.0", Map.of(), line -> {}).into(folder);
    List<String> said = new ArrayList<>();
    try (Archive archive = Archive.open(done.file())) {
      new Restore(empty(), PLAIN, said::add).from(archive);
    }
    assertTrue(
        said.contains("of_the_operator: left out, it is none of this program's tables"),
        said.toString());

    run(database, "create view handles as select handle from member");
    Map<String, String> before = sums(database);
    KeepRefused refused = assertThrows(KeepRefused.class, () -> restore(newest(), database, PLAIN));
    assertTrue(refused.getMessage().contains("handles"), refused.getMessage());
    assertEquals(before, sums(database));
  }

  @Test
  void aRehearsalLeavesNothingBehind() throws Exception {
    DatabaseLogin database = restored();
    Map<String, String> before = sums(database);
    List<String> said = new ArrayList<>();
    try (Archive archive = Archive.open(newest())) {
      new Restore(database, PLAIN, said::add).rehearse(archive);
      assertEquals(archive.manifest().tables().size(), said.size());
    }
    assertEquals(before, sums(database));
    assertEquals(0, number(database, scratches()));
  }

  private static Map<String, String> sums(DatabaseLogin database) throws SQLException {
    try (Connection connection = database.connect()) {
      return EveryTable.sums(connection);
    }
  }
}
