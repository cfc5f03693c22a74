package club.emberwell.launch;

import static org.awaitility.Awaitility.await;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.Statement;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * A primary dies, its standby is promoted, and the program, which was told of both, goes on: what
 * deploy/README.md says of either kind of replication.
 */
@Tag("packaged")
@Tag("slow")
class FailoverTest {
  private static final Duration PATIENCE = Duration.ofSeconds(60);

  private Path folder;
  private DebianPostgres primary;
  private DebianPostgres standby;
  private Relay between;
  private PackagedProgram program;
  private CrashClient client;

  @BeforeEach
  void makeFolder() throws Exception {
    folder = Files.createTempDirectory("emberwell-failover-");
    Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwxr-xr-x"));
  }

  @AfterEach
  void endAll() throws Exception {
    if (program != null) {
      program.process.destroyForcibly().waitFor();
    }
    for (AutoCloseable each : new AutoCloseable[] {between, standby, primary}) {
      if (each != null) {
        each.close();
      }
    }
    PostgresBinaries.deleteTree(folder);
  }

  private void start(boolean synchronous) throws Exception {
    primary = DebianPostgres.fresh(folder.resolve("primary"), List.of("max_wal_senders=4"));
    primary.execute("create database emberwell");
    between = new Relay(primary.port);
    standby = DebianPostgres.standby(folder.resolve("standby"), between.port(), List.of());
    if (synchronous) {
      primary.execute("alter system set synchronous_standby_names = '*'");
      primary.execute("select pg_reload_conf()");
    }
    await().atMost(PATIENCE).until(this::replicated);
    Map<String, String> settings = new HashMap<>();
    settings.put(
        "EMBERWELL_DATABASE_URL",
        "jdbc:postgresql://127.0.0.1:%d,127.0.0.1:%d/emberwell?targetServerType=primary"
            .formatted(primary.port, standby.port));
    settings.put("EMBERWELL_DATABASE_USER", DebianPostgres.USER);
    settings.put("EMBERWELL_FIRST_DOOR", "open");
    settings.put("EMBERWELL_FIRST_READING_PUBLIC", "true");
    settings.put("EMBERWELL_DESK_FIRST_LOOK", "0");
    program = PackagedProgram.start(folder.resolve("home"), settings);
    program.awaitReadiness(200);
    client = new CrashClient("steady-hand", program.port, 7);
  }

  private boolean replicated() throws Exception {
    try (Connection connection = primary.connect("postgres");
        Statement statement = connection.createStatement();
        ResultSet found = statement.executeQuery("select count(*) from pg_stat_replication")) {
      return found.next() && found.getInt(1) == 1;
    }
  }

  /** Posts until so many more are acknowledged. */
  private void post(int more) throws Exception {
    int enough = client.kept.size() + more;
    client.work(() -> client.kept.size() < enough);
  }

  private void failOver() throws Exception {
    primary.kill();
    between.set(Relay.State.CUT);
    standby.promote();
    program.awaitReadiness(200);
  }

  private long lost() {
    return client.kept.values().stream().filter(each -> !client.finds(each)).count();
  }

  /** As many as there are live rows, and not one more: the index forgot what the database lost. */
  private void searchAgreesWithTheDatabase() throws Exception {
    try (Connection connection = standby.connect("emberwell");
        Statement statement = connection.createStatement();
        ResultSet rows =
            statement.executeQuery(
                "select count(*) from entry where kind = 'report' and state = 'live'")) {
      assertTrue(rows.next());
      int live = rows.getInt(1);
      await().atMost(PATIENCE).until(() -> client.total() == live);
    }
  }

  @Test
  void synchronousReplicationLosesNothing() throws Exception {
    start(true);
    post(20);
    between.set(Relay.State.SILENT);
    AtomicBoolean on = new AtomicBoolean(true);
    CompletableFuture<Void> waiting =
        CompletableFuture.runAsync(
            () -> {
              try {
                client.work(on::get);
              } catch (Exception e) {
                throw new IllegalStateException(e);
              }
            });
    int before = client.kept.size();
    TimeUnit.SECONDS.sleep(3);
    on.set(false);
    assertEquals(before, client.kept.size(), "acknowledged though the standby has nothing");
    failOver();
    waiting.get(PATIENCE.toSeconds() * 4, TimeUnit.SECONDS);
    assertEquals(0, lost());
    searchAgreesWithTheDatabase();
  }

  @Test
  void asynchronousReplicationLosesWhatTheStandbyHadNot() throws Exception {
    start(false);
    post(20);
    between.set(Relay.State.SILENT);
    post(20);
    failOver();
    assertTrue(lost() > 0, "the count cannot show a loss");
    searchAgreesWithTheDatabase();
    client.kept.clear();
    post(5);
    assertEquals(0, lost());
    searchAgreesWithTheDatabase();
  }
}
