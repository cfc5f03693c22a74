package club.emberwell.keep;

import static club.emberwell.keep.KeptArchives.PLAIN;
import static club.emberwell.keep.KeptArchives.empty;
import static club.emberwell.keep.KeptArchives.endAll;
import static club.emberwell.keep.KeptArchives.number;
import static club.emberwell.keep.KeptArchives.restore;
import static club.emberwell.keep.KeptArchives.restored;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A backup while others write, and one that breaks off. */
class BackupTest {
  @TempDir Path folder;

  @Test
  void aBackupWhileMembersPostIsOfOneMoment() throws Exception {
    DatabaseLogin database = restored();
    AtomicBoolean enough = new AtomicBoolean();
    AtomicInteger posted = new AtomicInteger();
    List<Thread> writers = new ArrayList<>();
    for (int i = 0; i < 3; i++) {
      Thread writer = new Thread(() -> post(database, enough, posted));
      writer.start();
      writers.add(writer);
    }
    List<Integer> seen = new ArrayList<>();
    Backup.Done done =
        new Backup(
                database,
                "1.0",
                Map.of(),
                line -> {
                  int from = posted.get();
                  seen.add(from);
                  // until somebody has posted between these two tables
                  while (posted.get() == from && writers.stream().anyMatch(Thread::isAlive)) {
                    Thread.onSpinWait();
                  }
                })
            .into(folder);
    enough.set(true);
    for (Thread writer : writers) {
      writer.join();
    }
    assertTrue(seen.get(seen.size() - 1) > seen.get(0) + 20, seen.toString());
    DatabaseLogin other = empty();
    restore(done.file(), other, PLAIN);
    assertEquals(
        number(other, "select count(*) from entry where title = 'Posted'"),
        number(
            other,
            """
            select count(*) from entry e join talk t on t.id = e.id
              join entry_revision v on v.entry_id = e.id and v.version = e.version
             where e.title = 'Posted'
            """));
  }

  private static void post(DatabaseLogin database, AtomicBoolean enough, AtomicInteger posted) {
    try (Connection connection = database.connect()) {
      connection.setAutoCommit(false);
      while (!enough.get()) {
        UUID id = UUID.randomUUID();
        for (String sql :
            List.of(
                """
                insert into entry (id, kind, member_id, state, version, title, created_at, updated_at)
                select ?, 'notice', id, 'live', 1, 'Posted', now(), now()
                  from member where status = 'active' limit 1
                """,
                """
                insert into entry_revision (entry_id, version, action, at, state, written)
                values (?, 1, 'posted', now(), 'live', '{}')
                """,
                """
                insert into talk (id, kind, body, active_at) values (?, 'notice', 'Text', now())
                """)) {
          try (PreparedStatement insert = connection.prepareStatement(sql)) {
            insert.setObject(1, id);
            insert.executeUpdate();
          }
        }
        connection.commit();
        posted.incrementAndGet();
      }
    } catch (SQLException e) {
      throw new IllegalStateException(e);
    }
  }

  @Test
  void aBackupThatBreaksOffLeavesNoFile() throws Exception {
    DatabaseLogin database = restored();
    Backup backup =
        new Backup(
            database,
            "1.0",
            Map.of(),
            line -> {
              if (line.startsWith("report:")) {
                endAll(database);
              }
            });
    assertThrows(KeepRefused.class, () -> backup.into(folder));
    try (Stream<Path> files = Files.list(folder)) {
      assertEquals(0, files.count());
    }
  }
}
