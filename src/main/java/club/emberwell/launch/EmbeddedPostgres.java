package club.emberwell.launch;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;
import org.jboss.logging.Logger;

/**
 * A real PostgreSQL server over its {@link PostgresData}: started, adopted when it outlived us,
 * started again when it dies, stopped last.
 */
public final class EmbeddedPostgres implements AutoCloseable {
  /** The owner of everything in the built-in server. */
  public static final String USER = "emberwell";

  /** The club's database in it. */
  static final String DATABASE = "emberwell";

  private static final Logger LOG = Logger.getLogger(EmbeddedPostgres.class);
  private static final Duration START_TIMEOUT = Duration.ofSeconds(60);
  private static final Duration RESTART_PAUSE = Duration.ofMillis(300);

  private final Path folder;
  private final Path data;
  private final Path programs;
  private final Account account;
  private final Map<String, String> settings;
  private final String password;
  private final int port;
  private volatile ProcessHandle server;
  private volatile boolean stopping;

  private EmbeddedPostgres(
      Path folder, Path programs, Account account, Map<String, String> settings)
      throws IOException {
    this.folder = folder;
    PostgresData own = new PostgresData(folder, programs, account);
    this.data = own.data();
    this.programs = programs;
    this.account = account;
    this.settings = settings;
    this.password = own.password();
    own.initialise(!"off".equals(settings.get("fsync")));
    Optional<Postmaster> running = Postmaster.runningOn(data);
    this.port = running.map(Postmaster::port).orElseGet(EmbeddedPostgres::freePort);
    if (running.isPresent()) {
      server = ProcessHandle.of(running.get().pid()).orElseThrow();
      LOG.infof("Went on with the database that was still running on port %d", port);
    } else {
      launch();
    }
  }

  /**
   * Starts, or adopts, the server below a folder and keeps it running until {@link #close()}.
   *
   * @throws LaunchException with a sentence for people when it cannot be started
   */
  public static EmbeddedPostgres start(Path folder) {
    return start(folder, folder, PostgresSettings.durable());
  }

  /** As {@link #start(Path)}, with the programs elsewhere and other settings. */
  static EmbeddedPostgres start(Path folder, Path cache, Map<String, String> settings) {
    return start(folder, cache, settings, Account.current());
  }

  /** As {@link #start(Path)}, under a given account. */
  static EmbeddedPostgres start(
      Path folder, Path cache, Map<String, String> settings, Account account) {
    try {
      Path home = Files.createDirectories(folder).toRealPath();
      if (account.ownsOtherFiles()) {
        // whatever the umask is
        Files.setPosixFilePermissions(home, PosixFilePermissions.fromString("rwx--x--x"));
      }
      Path programs = PostgresBinaries.unpackedIn(Files.createDirectories(cache).toRealPath());
      EmbeddedPostgres postgres = new EmbeddedPostgres(home, programs, account, settings);
      postgres.awaitReady();
      postgres.supervise();
      return postgres;
    } catch (IOException e) {
      throw new LaunchException(
          ExitCode.NO_DATABASE,
          "The built-in database cannot be started in " + folder + ": " + e,
          e);
    }
  }

  /** Where JDBC finds a database of this server. */
  public String jdbcUrl(String database) {
    return "jdbc:postgresql://127.0.0.1:" + port + "/" + database;
  }

  /** The password of {@link #USER}. */
  public String password() {
    return password;
  }

  /** The TCP port on loopback; it stays the same while this object lives. */
  public int port() {
    return port;
  }

  /** The process id of the server. */
  public long pid() {
    return server.pid();
  }

  /** Makes a database unless it is there. */
  public void createDatabase(String name) {
    if (!name.matches("[a-z][a-z0-9_]*")) {
      throw new IllegalArgumentException(name);
    }
    try (Connection connection = connect("postgres");
        Statement statement = connection.createStatement();
        ResultSet found =
            statement.executeQuery("SELECT 1 FROM pg_database WHERE datname = '" + name + "'")) {
      if (!found.next()) {
        try (Statement create = connection.createStatement()) {
          create.executeUpdate("CREATE DATABASE " + name);
        }
      }
    } catch (SQLException e) {
      throw new LaunchException(
          ExitCode.NO_DATABASE, "The database " + name + " cannot be made: " + e.getMessage(), e);
    }
  }

  /** A plain connection as {@link #USER}. */
  public Connection connect(String database) throws SQLException {
    Properties login = new Properties();
    login.setProperty("user", USER);
    login.setProperty("password", password);
    login.setProperty("connectTimeout", "5");
    return DriverManager.getConnection(jdbcUrl(database), login);
  }

  /** Stops the server: open sessions are ended, everything committed is on disk. */
  @Override
  public void close() {
    leaveAlone();
    try {
      ProgramRun.output(stopCommand("fast"), Duration.ofSeconds(60));
    } catch (IOException e) {
      LOG.errorf("The database did not stop: %s", e.getMessage());
    }
  }

  /** Lets the server go: from now on it is not started again when it ends. */
  void leaveAlone() {
    stopping = true;
  }

  /** The command that stops the server; modes as {@code pg_ctl} has them. */
  List<String> stopCommand(String mode) {
    return account.command(
        List.of(program("pg_ctl"), "stop", "-w", "-t", "50", "-m", mode, "-D", data.toString()));
  }

  private String program(String name) {
    return PostgresBinaries.program(programs, name);
  }

  private void launch() throws IOException {
    Postmaster.clearStaleLock(data);
    account.own(data);
    List<String> words = new ArrayList<>(List.of(program("postgres"), "-D", data.toString()));
    words.addAll(List.of("-p", Integer.toString(port)));
    words.addAll(PostgresSettings.asArguments(settings));
    // a session of its own: Ctrl-C in the terminal must reach only us, who stop the database last
    List<String> line = new ArrayList<>(List.of("setsid"));
    line.addAll(account.command(words));
    Process process =
        new ProcessBuilder(line)
            .directory(folder.toFile())
            .redirectErrorStream(true)
            .redirectOutput(log())
            .redirectInput(ProcessBuilder.Redirect.from(new java.io.File("/dev/null")))
            .start();
    server = process.toHandle();
  }

  private ProcessBuilder.Redirect log() throws IOException {
    Path log = folder.resolve("server.log");
    if (Files.exists(log) && Files.size(log) > 10_000_000) {
      Files.move(log, folder.resolve("server.log.1"), StandardCopyOption.REPLACE_EXISTING);
    }
    if (!Files.exists(log)) {
      Files.createFile(
          log, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
    }
    return ProcessBuilder.Redirect.appendTo(log.toFile());
  }

  private void awaitReady() throws IOException {
    Instant deadline = Instant.now().plus(START_TIMEOUT);
    while (true) {
      try (Connection connection = connect("postgres")) {
        connection.isValid(5);
        return;
      } catch (SQLException e) {
        if (Instant.now().isAfter(deadline)) {
          throw new IOException(e.getMessage() + "; see " + folder.resolve("server.log"), e);
        }
        if (!server.isAlive()) {
          // children of a killed server hold its memory for a moment
          pause(RESTART_PAUSE);
          launch();
        }
        pause(Duration.ofMillis(20));
      }
    }
  }

  private void supervise() {
    server
        .onExit()
        .thenRunAsync(
            () -> {
              if (!stopping) {
                LOG.error("The database ended by itself; starting it again");
                restart();
              }
            },
            task -> {
              Thread thread = new Thread(task, "database-supervisor");
              thread.setDaemon(true);
              thread.start();
            });
  }

  private void restart() {
    while (!stopping) {
      try {
        launch();
        awaitReady();
        LOG.info("The database is back");
        supervise();
        return;
      } catch (IOException e) {
        LOG.errorf("The database does not come back: %s", e.getMessage());
        pause(Duration.ofSeconds(2));
      }
    }
  }

  private static int freePort() {
    try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      return socket.getLocalPort();
    } catch (IOException e) {
      throw new LaunchException(ExitCode.NO_DATABASE, "No free port on loopback: " + e, e);
    }
  }

  private static void pause(Duration duration) {
    try {
      Thread.sleep(duration.toMillis());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new LaunchException(ExitCode.FAILED, "Interrupted while waiting for the database.", e);
    }
  }
}
