package club.emberwell.launch;

import static org.awaitility.Awaitility.await;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;

/** A PostgreSQL of an operator's own, as Debian packages it: alone, or a standby of another. */
final class DebianPostgres implements AutoCloseable {
  static final String USER = "emberwell";
  private static final Path PROGRAMS = Path.of("/usr/lib/postgresql/15/bin");
  private static final Duration PATIENCE = Duration.ofSeconds(90);

  final int port;
  private final Path data;
  private final List<String> settings;

  private DebianPostgres(Path data, List<String> settings) throws IOException {
    this.data = data;
    this.settings = settings;
    this.port = PackagedProgram.freePort();
  }

  /** A new server in a folder that is not there yet; settings as {@code name=value}. */
  static DebianPostgres fresh(Path data, List<String> settings) throws IOException {
    run(
        "initdb",
        "-D",
        data.toString(),
        "-U",
        USER,
        "-A",
        "trust",
        "-E",
        "UTF8",
        "--locale=C.UTF-8");
    DebianPostgres server = new DebianPostgres(data, settings);
    server.start();
    return server;
  }

  /** A standby of a server, which it reaches on a port of this machine. */
  static DebianPostgres standby(Path data, int primary, List<String> settings) throws IOException {
    String port = Integer.toString(primary);
    run(
        "pg_basebackup",
        "-D",
        data.toString(),
        "-h",
        "127.0.0.1",
        "-p",
        port,
        "-U",
        USER,
        "-R",
        "-c",
        "fast");
    DebianPostgres server = new DebianPostgres(data, settings);
    server.start();
    return server;
  }

  private void start() throws IOException {
    List<String> words = new ArrayList<>(List.of(program("postgres"), "-D", data.toString()));
    words.addAll(List.of("-p", Integer.toString(port)));
    words.addAll(List.of("-c", "listen_addresses=127.0.0.1", "-c", "unix_socket_directories="));
    settings.forEach(each -> words.addAll(List.of("-c", each)));
    List<String> line = new ArrayList<>(List.of("setsid"));
    line.addAll(Account.current().command(words));
    new ProcessBuilder(line)
        .redirectErrorStream(true)
        .redirectOutput(data.resolveSibling(data.getFileName() + ".log").toFile())
        .start();
    await()
        .atMost(PATIENCE)
        .ignoreExceptions()
        .until(
            () -> {
              try (Connection connection = connect("postgres")) {
                return connection.isValid(5);
              }
            });
  }

  Connection connect(String database) throws SQLException {
    return DriverManager.getConnection(
        "jdbc:postgresql://127.0.0.1:" + port + "/" + database, USER, "");
  }

  void execute(String sql) throws SQLException {
    try (Connection connection = connect("postgres");
        Statement statement = connection.createStatement()) {
      statement.execute(sql);
    }
  }

  /** A standby becomes a server that takes writes. */
  void promote() throws IOException {
    run("pg_ctl", "promote", "-w", "-t", "60", "-D", data.toString());
  }

  void kill() throws IOException {
    Killing.kill(Killing.serverOf(data));
  }

  @Override
  public void close() throws IOException {
    kill();
  }

  static String program(String name) {
    return PROGRAMS.resolve(name).toString();
  }

  private static void run(String name, String... words) throws IOException {
    List<String> line = new ArrayList<>(List.of(program(name)));
    line.addAll(List.of(words));
    ProgramRun.output(Account.current().command(line), PATIENCE);
  }
}
