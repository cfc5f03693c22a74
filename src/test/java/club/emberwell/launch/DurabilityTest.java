package club.emberwell.launch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Rows whose commit was answered are still there after a process was killed. Each test counts what
 * a writer in a JVM of its own was told; the last test proves that the count can show a loss.
 */
@Tag("slow")
class DurabilityTest {
  private static final Path CACHE = Path.of("target", "test-postgres").toAbsolutePath();

  private final Set<Long> kept = new TreeSet<>();
  private Path folder;
  private Process writer;
  private BufferedReader lines;
  private long serverPid;

  @AfterEach
  void endBoth() throws IOException {
    writer.destroyForcibly();
    ProcessHandle.of(serverPid).ifPresent(ProcessHandle::destroyForcibly);
    try (EmbeddedPostgres server = EmbeddedPostgres.start(folder, CACHE, settings())) {
      assertTrue(server.port() > 0);
    }
    PostgresBinaries.deleteTree(folder);
  }

  @Test
  void aServerThatOutlivedItsProgramIsAdoptedWithAllItsRows() throws Exception {
    write("durable", 300);
    kill(writer.toHandle());
    try (EmbeddedPostgres server = EmbeddedPostgres.start(folder, CACHE, settings())) {
      assertEquals(serverPid, server.pid());
      assertEquals(Set.of(), lostIn(server));
    }
  }

  @Test
  void aServerThatIsKilledComesBackOnTheSamePortWithAllItsRows() throws Exception {
    write("durable", 300);
    Postmaster before = Postmaster.runningOn(folder.resolve("data")).orElseThrow();
    kill(ProcessHandle.of(serverPid).orElseThrow());
    long begun = System.nanoTime();
    readRows(50);
    double seconds = (System.nanoTime() - begun) / 1e9;
    assertTrue(seconds < 20, "back after " + seconds + " s");
    Postmaster after = Postmaster.runningOn(folder.resolve("data")).orElseThrow();
    assertNotEquals(before.pid(), after.pid());
    assertEquals(before.port(), after.port());
    kill(writer.toHandle());
    try (EmbeddedPostgres server = EmbeddedPostgres.start(folder, CACHE, settings())) {
      assertEquals(Set.of(), lostIn(server));
    }
  }

  @Test
  void nothingIsLostWhenBothAreKilled() throws Exception {
    write("durable", 300);
    killBoth();
    try (EmbeddedPostgres server = EmbeddedPostgres.start(folder, CACHE, settings())) {
      assertNotEquals(serverPid, server.pid());
      assertEquals(Set.of(), lostIn(server));
    }
  }

  @Test
  void aServerThatAnswersBeforeItsRowsAreOnDiskIsSeenToLoseThem() throws Exception {
    write("forgetful", 300);
    killBoth();
    try (EmbeddedPostgres server = EmbeddedPostgres.start(folder, CACHE, settings())) {
      assertNotEquals(Set.of(), lostIn(server), "the negative control lost nothing");
    }
  }

  @Test
  void aLockFileWhoseProcessIsSomethingElseByNowIsNoServer() throws Exception {
    write("durable", 10);
    killBoth();
    Path lock = folder.resolve("data/postmaster.pid");
    // the number is in use again, by this very JVM
    String stale = Files.readString(lock);
    String own = Long.toString(ProcessHandle.current().pid());
    Files.writeString(lock, own + stale.substring(stale.indexOf('\n')));
    try (EmbeddedPostgres server = EmbeddedPostgres.start(folder, CACHE, settings())) {
      assertEquals(Set.of(), lostIn(server));
    }
  }

  private static java.util.Map<String, String> settings() {
    return RowWriter.settings("durable");
  }

  private void write(String settings, int rows) throws IOException {
    folder = Files.createTempDirectory(Path.of("target").toAbsolutePath(), "durability-");
    Files.createDirectories(CACHE);
    writer =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx128m",
                "-cp",
                System.getProperty("java.class.path"),
                RowWriter.class.getName(),
                folder.toString(),
                CACHE.toString(),
                settings)
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    lines = writer.inputReader(StandardCharsets.US_ASCII);
    readRows(rows);
  }

  private void readRows(int count) throws IOException {
    int read = 0;
    while (read < count) {
      String line = lines.readLine();
      assertTrue(line != null, "the writer ended");
      read += note(line);
    }
  }

  private int note(String line) {
    if (line.startsWith("server ")) {
      serverPid = Long.parseLong(line.substring("server ".length()));
      return 0;
    }
    if (line.startsWith("kept ")) {
      kept.add(Long.parseLong(line.substring("kept ".length())));
      return 1;
    }
    return 0;
  }

  private void killBoth() throws Exception {
    ProcessHandle.of(serverPid).orElseThrow().destroyForcibly();
    kill(writer.toHandle());
    // what stood in the pipe was answered before the end
    for (String line = lines.readLine(); line != null; line = lines.readLine()) {
      note(line);
    }
  }

  private static void kill(ProcessHandle process) throws Exception {
    process.destroyForcibly();
    process.onExit().get(20, java.util.concurrent.TimeUnit.SECONDS);
  }

  private Set<Long> lostIn(EmbeddedPostgres server) throws SQLException {
    Set<Long> lost = new TreeSet<>(kept);
    try (Connection connection = server.connect("postgres");
        Statement statement = connection.createStatement();
        ResultSet rows = statement.executeQuery("SELECT n FROM kept")) {
      while (rows.next()) {
        lost.remove(rows.getLong(1));
      }
    } catch (SQLException e) {
      // the forgetful server may have lost the table too
      if (!"42P01".equals(e.getSQLState())) {
        throw e;
      }
    }
    return lost;
  }
}
