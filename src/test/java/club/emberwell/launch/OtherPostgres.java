package club.emberwell.launch;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.util.List;

/** A PostgreSQL of the machine, as an operator's own: its version is not ours. */
final class OtherPostgres implements AutoCloseable {
  private static final Path PROGRAMS = Path.of("/usr/lib/postgresql/15/bin");
  private static final Duration PATIENCE = Duration.ofSeconds(60);

  private final Path folder;
  private final Account account = Account.current();
  private final int port;

  private OtherPostgres(Path folder) throws IOException {
    this.folder = folder;
    try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      port = socket.getLocalPort();
    }
  }

  static boolean isThere() {
    return Files.isExecutable(PROGRAMS.resolve("initdb"));
  }

  /** Starts one in an empty folder that its account can reach. */
  static OtherPostgres start(Path folder) throws IOException {
    OtherPostgres server = new OtherPostgres(folder);
    server.account.own(folder);
    String data = folder.resolve("data").toString();
    server.run("initdb", "-D", data, "-U", "admin", "-A", "trust", "-E", "UTF8", "--no-sync");
    server.run(
        "pg_ctl",
        "start",
        "-w",
        "-D",
        data,
        "-l",
        folder.resolve("log").toString(),
        "-o",
        "-F -p " + server.port + " -c listen_addresses=127.0.0.1 -c unix_socket_directories=");
    return server;
  }

  private void run(String program, String... words) throws IOException {
    List<String> line = new java.util.ArrayList<>(List.of(PROGRAMS.resolve(program).toString()));
    line.addAll(List.of(words));
    ProgramRun.output(account.command(line), PATIENCE);
  }

  String url(String database) {
    return "jdbc:postgresql://127.0.0.1:" + port + "/" + database;
  }

  void run(String sql) throws SQLException {
    try (Connection connection = DriverManager.getConnection(url("postgres"), "admin", "");
        Statement statement = connection.createStatement()) {
      statement.execute(sql);
    }
  }

  @Override
  public void close() throws IOException {
    run("pg_ctl", "stop", "-w", "-m", "immediate", "-D", folder.resolve("data").toString());
  }
}
