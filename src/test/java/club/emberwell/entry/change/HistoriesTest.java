package club.emberwell.entry.change;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.entry.change.ChangeLog.Change;
import club.emberwell.entry.change.ChangeLog.Footing;
import club.emberwell.entry.change.ChangeLog.Known;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Consumer;
import javax.sql.DataSource;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * What begins anew in a database that came from elsewhere. A dump keeps the numbers of transactions
 * of the server it was made on, which may be ahead of those of the server it is restored on
 * (PostgreSQL 17 documentation, 8.19 on xid8 and 26.1 on dumps).
 */
@QuarkusTest
class HistoriesTest {
  private static final String READER = "invented-reader";

  @Inject StoredChangeLog log;
  @Inject StoredReaders readers;
  @Inject DataSource database;

  private final List<UUID> taken = new ArrayList<>();
  private ChangeFollower follower;

  @BeforeEach
  void follow() throws SQLException {
    run("insert into change_reader (name) values ('%s')".formatted(READER));
    Consumer<List<Change>> take = some -> some.forEach(change -> taken.add(change.id()));
    follower = readers.following(READER, 100, take);
    follower.all();
  }

  /** All other readers stand at the end, in the history that holds now. */
  @AfterEach
  void leave() throws SQLException {
    run("delete from change_reader where name = '%s'".formatted(READER));
    run(
        """
        update change_reader set epoch = h.epoch, xid = c.xid, seq = c.seq
          from history_epoch h,
            (select coalesce(max(cast(cast(xid as text) as bigint)), 2) as xid,
                coalesce(max(seq), 0) as seq
              from change_row) c""");
  }

  /** As a dump of a busier server would leave it here. */
  private void comeFromElsewhere() throws SQLException {
    run(
        "update change_row set xid = cast(cast(cast(cast(xid as text) as bigint) + 1000000000 as text) as xid8)");
    run("update change_reader set xid = xid + 1000000000");
    run("update history_epoch set lies_at = '1/00000001/1/1', trimmed_xid = 1000000000");
  }

  @Test
  void howeverManyLookAtOnceOneNewHistoryBegins()
      throws SQLException, InterruptedException, ExecutionException {
    UUID before = log.epoch();
    long number = number();
    comeFromElsewhere();
    ExecutorService threads = Executors.newFixedThreadPool(6);
    try {
      List<Future<UUID>> all = new ArrayList<>();
      for (int i = 0; i < 12; i++) {
        all.add(threads.submit(log::epoch));
      }
      Set<UUID> seen = new HashSet<>();
      for (Future<UUID> each : all) {
        seen.add(each.get());
      }
      assertEquals(1, seen.size());
      assertFalse(seen.contains(before));
      assertEquals(number + 1, number());
    } finally {
      threads.shutdown();
    }
  }

  @Test
  void readersTakeWhatWaitedForThemAndNothingTwice() throws SQLException {
    UUID told = write();
    follower.all();
    UUID waits = write();
    comeFromElsewhere();
    UUID comes = write();
    follower.all();
    UUID later = write();
    follower.all();
    taken.removeIf(id -> !Set.of(told, waits, comes, later).contains(id));
    assertEquals(List.of(told, waits, comes, later), taken);
  }

  @Test
  void anIndexOfBeforeIsMadeAnewAndOneMadeNowFollows() throws SQLException {
    write();
    Known before = log.head();
    comeFromElsewhere();
    Footing footing = log.footing(before);
    assertFalse(footing.follows());
    assertTrue(footing.answers(), "all it has seen is there");
    assertTrue(log.footing(log.head()).follows());
    write();
    assertTrue(log.footing(log.head()).follows());
  }

  @Test
  void aDatabaseThatWasPutBackIsKnownByTheRowsItLost() throws SQLException {
    write();
    UUID lost = write();
    Known before = log.head();
    assertTrue(log.footing(before).follows());
    // the same server goes another way under the same numbers
    run(
        "update change_row set entity_id = gen_random_uuid() where entity_id = '%s'"
            .formatted(lost));
    Footing footing = log.footing(before);
    assertFalse(footing.follows());
    assertFalse(footing.answers(), "it has seen what is gone");
    UUID now = log.epoch();
    assertNotEquals(before.history(), now);
    assertFalse(log.footing(before).follows());
    assertEquals(now, log.epoch(), "once");
  }

  @Test
  void anOlderHistoryThatComesBackIsNoneToGoOnIn() throws SQLException {
    UUID older = log.epoch();
    long number = number();
    log.startNewEpoch();
    write();
    Known known = log.head();
    run("update history_epoch set epoch = '%s', number = %d".formatted(older, number));
    assertFalse(log.footing(known).follows());
    assertNotEquals(older, log.epoch());
    assertTrue(number() > known.number());
  }

  @Test
  void whileARestoreLoadsTableByTableNothingIsWritten() throws SQLException {
    UUID before = log.epoch();
    comeFromElsewhere();
    run("alter table report_change rename constraint report_change_pkey to was_there");
    run("alter table report_change drop constraint was_there");
    long rows = number("select count(*) from report_change");
    try {
      assertThrows(IllegalStateException.class, log::epoch);
      assertEquals(before.toString(), text("select epoch from history_epoch"));
      assertEquals(rows, number("select count(*) from report_change"));
    } finally {
      run("alter table report_change add primary key (seq)");
    }
    assertNotEquals(before, log.epoch());
  }

  @Test
  void numbersOfTransactionsThatAreStoredAreNotComparedAnyMore() throws SQLException {
    run("insert into erasure (member_id, choice, at) values (gen_random_uuid(), 'keep', now())");
    comeFromElsewhere();
    log.epoch();
    assertEquals(0, number("select count(*) from erasure where xid <> '0'"));
    assertEquals(0, number("select count(*) from data_package where seen <> '0'"));
  }

  private UUID write() throws SQLException {
    UUID id = UUID.randomUUID();
    run("insert into change_row (entity, entity_id) values ('report', '%s')".formatted(id));
    return id;
  }

  private long number() throws SQLException {
    return number("select number from history_epoch");
  }

  private long number(String sql) throws SQLException {
    return Long.parseLong(text(sql));
  }

  private String text(String sql) throws SQLException {
    try (Connection connection = database.getConnection();
        Statement statement = connection.createStatement();
        ResultSet rows = statement.executeQuery(sql)) {
      rows.next();
      return rows.getString(1);
    }
  }

  private void run(String sql) throws SQLException {
    try (Connection connection = database.getConnection();
        Statement statement = connection.createStatement()) {
      statement.executeUpdate(sql);
    }
  }
}
