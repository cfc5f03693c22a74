package club.emberwell.launch;

import static org.awaitility.Awaitility.await;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The packaged program over a database of its own, with a network before it and one between the
 * two, on a small disk, with a clock that can be moved: all that a {@link CrashFault} lays hands
 * on.
 */
final class CrashClub implements AutoCloseable {
  private static final Duration PATIENCE = Duration.ofSeconds(120);

  private static final int ATTEMPTS = 5;

  /** Debian's libfaketime: the program's clock, not the database's. */
  private static final Path FAKE_TIME =
      Path.of("/usr/lib/x86_64-linux-gnu/faketime/libfaketime.so.1");

  final Relay toProgram;
  final Relay toDatabase;
  final Path disk;
  private final EmbeddedPostgres database;
  private final Path clock;
  private PackagedProgram program;
  private int starts;

  /**
   * Starts all of it.
   *
   * @param disk a folder that exists, on a disk that may be filled
   * @param unsafe whether commits are answered before they are on disk: the negative control
   */
  CrashClub(Path disk, boolean unsafe) throws Exception {
    this.disk = disk;
    Map<String, String> settings = new HashMap<>(PostgresSettings.durable());
    if (unsafe) {
      settings.put("synchronous_commit", "off");
      settings.put("wal_writer_delay", "10s");
    }
    Path cache = Path.of("target", "test-postgres").toAbsolutePath();
    database = EmbeddedPostgres.start(disk.resolve("postgres"), cache, settings);
    database.createDatabase("emberwell");
    toDatabase = new Relay(database.port());
    Path home = Files.createDirectories(disk.resolve("home"));
    Files.setPosixFilePermissions(home, PosixFilePermissions.fromString("rwx------"));
    clock = Files.createTempFile("emberwell-clock-", "");
    moveClock("+0");
    toProgram = new Relay(0);
    try {
      startProgram();
    } catch (Exception | AssertionError e) {
      close();
      throw e;
    }
  }

  void startProgram() throws Exception {
    startProgram(false);
  }

  /**
   * Starts it again after it was killed.
   *
   * @param movable whether its clock can be moved, which costs ten times the work
   */
  void startProgram(boolean movable) throws Exception {
    Map<String, String> settings = new HashMap<>();
    settings.put(
        "EMBERWELL_DATABASE_URL",
        "jdbc:postgresql://127.0.0.1:" + toDatabase.port() + "/emberwell");
    settings.put("EMBERWELL_DATABASE_USER", EmbeddedPostgres.USER);
    settings.put("EMBERWELL_DATABASE_PASSWORD", database.password());
    settings.put("EMBERWELL_DATABASE_WAIT_SECONDS", "60");
    settings.put("EMBERWELL_FIRST_DOOR", "open");
    settings.put("EMBERWELL_FIRST_READING_PUBLIC", "true");
    settings.put("EMBERWELL_DESK_FIRST_LOOK", "0");
    settings.put("EMBERWELL_LIMITS_WRITE_ACCOUNT", "1000000 in 1H, then 1S to 1M");
    settings.put("EMBERWELL_LIMITS_WRITE_ADDRESS", "1000000 in 1H, then 1S to 1M");
    settings.put("JAVA_TOOL_OPTIONS", "-XX:TieredStopAtLevel=1");
    if (movable) {
      settings.put("LD_PRELOAD", FAKE_TIME.toString());
      settings.put("FAKETIME_TIMESTAMP_FILE", clock.toString());
      settings.put("FAKETIME_CACHE_DURATION", "1");
      settings.put("FAKETIME_DONT_FAKE_MONOTONIC", "1");
    }
    for (int attempt = 1; attempt == 1 || !program.process.isAlive(); attempt++) {
      if (attempt > ATTEMPTS) {
        throw new AssertionError("it ends again and again: " + output());
      }
      // as the unit does: a machine that is too busy gives no connection in time
      program = PackagedProgram.start(disk.resolve("home"), settings);
      starts++;
      program.awaitReadyOrEnd();
    }
    program.awaitReadiness(200);
    toProgram.leadTo(program.port);
  }

  int starts() {
    return starts;
  }

  void awaitReady() throws Exception {
    program.awaitReadiness(200);
  }

  String output() throws IOException {
    return program.output();
  }

  Connection connect() throws SQLException {
    return database.connect("emberwell");
  }

  /** Ahead of or behind the true time, as {@code date} says it: +5h, -90m. */
  void moveClock(String offset) throws IOException {
    Files.writeString(clock, offset);
  }

  boolean canMoveClock() {
    return Files.exists(FAKE_TIME);
  }

  void killProgram() throws IOException {
    tellErrors();
    Killing.kill(List.of(program.process.toHandle()));
  }

  /** Whoever started it starts it again. */
  void killDatabase() throws IOException {
    Killing.kill(Killing.serverOf(disk.resolve("postgres/data")));
  }

  void awaitDatabase() {
    await()
        .atMost(PATIENCE)
        .ignoreExceptions()
        .until(
            () -> {
              try (Connection connection = connect()) {
                return connection.isValid(5);
              }
            });
  }

  /** What it logged as errors, with where that came from: failures that nobody foresaw. */
  private void tellErrors() throws IOException {
    program
        .output()
        .lines()
        .filter(line -> line.contains(" ERROR ") || line.startsWith("Caused by: "))
        .distinct()
        .forEach(System.out::println);
  }

  @Override
  public void close() throws IOException {
    tellErrors();
    program.process.destroy();
    if (!Killing.ends(program.process.toHandle(), PATIENCE)) {
      killProgram();
    }
    toProgram.close();
    toDatabase.close();
    database.close();
    Files.deleteIfExists(clock);
  }
}
