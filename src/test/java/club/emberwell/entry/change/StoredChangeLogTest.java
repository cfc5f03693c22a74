package club.emberwell.entry.change;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import club.emberwell.entry.change.ChangeLog.Change;
import club.emberwell.entry.change.ChangeLog.Position;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import javax.sql.DataSource;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * The order in which a reader misses nothing: PostgreSQL makes rows visible in the order of
 * commits, not of their numbers (PostgreSQL 17 documentation, 9.16 on sequences and 9.26.9 on
 * pg_snapshot_xmin).
 */
@QuarkusTest
class StoredChangeLogTest {
  @Inject StoredChangeLog log;
  @Inject DataSource database;
  @Inject StoredReaders readers;

  @BeforeEach
  void empty() throws SQLException {
    try (Connection connection = database.getConnection();
        Statement delete = connection.createStatement()) {
      delete.executeUpdate("delete from change_row");
    }
    log.startNewEpoch();
  }

  /** Else the first look of each would step over what the next test class writes before it. */
  @AfterEach
  void letReadersBeginInTheNewHistory() throws SQLException {
    readers().forEach(reader -> readers.following(reader, 1, changes -> {}).some());
  }

  @Test
  void anOlderOpenTransactionIsWaitedFor() throws SQLException {
    UUID early = UUID.randomUUID();
    UUID late = UUID.randomUUID();
    Position start = head();
    try (Connection open = database.getConnection()) {
      open.setAutoCommit(false);
      insert(open, early);
      write(late);
      assertEquals(List.of(), ids(log.since(start, 10)), "the older one is still running");
      open.commit();
    }
    assertEquals(List.of(early, late), ids(log.since(start, 10)));
  }

  @Test
  void pollingByNumberAloneLosesARow() throws SQLException {
    UUID early = UUID.randomUUID();
    UUID late = UUID.randomUUID();
    List<UUID> seen = new ArrayList<>();
    try (Connection open = database.getConnection()) {
      open.setAutoCommit(false);
      insert(open, early);
      write(late);
      long last = bySequence(0, seen);
      open.commit();
      bySequence(last, seen);
    }
    assertEquals(List.of(late), seen, "negative control: the early row is lost for ever");
  }

  @Test
  void nothingIsMissedBehindTheHead() {
    write(UUID.randomUUID());
    Position head = head();
    assertEquals(List.of(), log.since(head, 10));
    UUID after = UUID.randomUUID();
    write(after);
    assertEquals(List.of(after), ids(log.since(head, 10)));
  }

  @Test
  void changesComeInPagesWithoutGapsOrRepeats() {
    List<UUID> written = new ArrayList<>();
    Position at = head();
    for (int i = 0; i < 7; i++) {
      UUID id = UUID.randomUUID();
      written.add(id);
      write(id);
    }
    List<UUID> read = new ArrayList<>();
    List<Change> page = log.since(at, 3);
    while (!page.isEmpty()) {
      read.addAll(ids(page));
      page = log.since(page.get(page.size() - 1).position(), 3);
    }
    assertEquals(written, read);
  }

  @Test
  void trimmingSaysHowFarItWent() {
    write(UUID.randomUUID());
    write(UUID.randomUUID());
    Position last = newest();
    assertEquals(Position.START, log.trimmedTo());
    log.trim(Instant.now().plusSeconds(60));
    assertEquals(last, log.trimmedTo());
    assertEquals(
        List.of(last),
        log.since(Position.START, 10).stream().map(Change::position).toList(),
        "by the last one the history is known again");
    log.trim(Instant.now().minusSeconds(3600));
    assertEquals(last, log.trimmedTo(), "nothing is that old");
  }

  @Test
  void aChangeThatIsRolledBackIsNeverSeen() {
    Position start = head();
    QuarkusTransaction.begin();
    insert(UUID.randomUUID());
    QuarkusTransaction.rollback();
    assertFalse(log.since(start, 10).iterator().hasNext());
  }

  private Position head() {
    return log.head().last().position();
  }

  private List<String> readers() throws SQLException {
    List<String> names = new ArrayList<>();
    try (Connection connection = database.getConnection();
        PreparedStatement select = connection.prepareStatement("select name from change_reader");
        ResultSet rows = select.executeQuery()) {
      while (rows.next()) {
        names.add(rows.getString(1));
      }
    }
    return names;
  }

  private Position newest() {
    List<Change> all = log.since(Position.START, 100);
    return all.get(all.size() - 1).position();
  }

  private void write(UUID id) {
    QuarkusTransaction.requiringNew().run(() -> insert(id));
  }

  private void insert(UUID id) {
    try (Connection connection = database.getConnection()) {
      insert(connection, id);
    } catch (SQLException e) {
      throw new IllegalStateException(e);
    }
  }

  private static void insert(Connection connection, UUID id) throws SQLException {
    try (PreparedStatement insert =
        connection.prepareStatement(
            "insert into change_row (entity, entity_id) values ('report', ?)")) {
      insert.setObject(1, id);
      insert.executeUpdate();
    }
  }

  private long bySequence(long after, List<UUID> seen) throws SQLException {
    long last = after;
    try (Connection connection = database.getConnection();
        PreparedStatement select =
            connection.prepareStatement(
                "select seq, entity_id from change_row where seq > ? order by seq")) {
      select.setLong(1, after);
      try (ResultSet rows = select.executeQuery()) {
        while (rows.next()) {
          last = rows.getLong(1);
          seen.add(rows.getObject(2, UUID.class));
        }
      }
    }
    return last;
  }

  private static List<UUID> ids(List<Change> changes) {
    return changes.stream().map(Change::id).toList();
  }
}
