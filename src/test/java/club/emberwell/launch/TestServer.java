package club.emberwell.launch;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/**
 * The PostgreSQL server of this test JVM, known by system properties because Quarkus loads its
 * users in several class loaders.
 */
public record TestServer(Path folder, int port, String password) {
  private static final String PREFIX = "emberwell.test.server.";
  private static final Path ROOT = Path.of("target", "test-postgres").toAbsolutePath();

  /** The running server, started by the first caller. */
  public static TestServer shared() {
    synchronized (System.getProperties()) {
      if (System.getProperty(PREFIX + "port") == null) {
        startNew();
      }
      return new TestServer(
          Path.of(System.getProperty(PREFIX + "folder")),
          Integer.getInteger(PREFIX + "port"),
          System.getProperty(PREFIX + "password"));
    }
  }

  /** A new empty database; answers its name. */
  public String freshDatabase() {
    synchronized (System.getProperties()) {
      int number = Integer.getInteger(PREFIX + "count", 0) + 1;
      System.setProperty(PREFIX + "count", Integer.toString(number));
      String name = "test" + number;
      try (java.sql.Connection connection =
              java.sql.DriverManager.getConnection(
                  jdbcUrl("postgres"), EmbeddedPostgres.USER, password);
          java.sql.Statement statement = connection.createStatement()) {
        statement.executeUpdate("CREATE DATABASE " + name);
        return name;
      } catch (java.sql.SQLException e) {
        throw new IllegalStateException(e);
      }
    }
  }

  /** Where JDBC finds a database of this server. */
  public String jdbcUrl(String database) {
    return "jdbc:postgresql://127.0.0.1:" + port + "/" + database;
  }

  private static void startNew() {
    Path folder = ROOT.resolve(Long.toString(ProcessHandle.current().pid()));
    try {
      sweep();
      EmbeddedPostgres server = EmbeddedPostgres.start(folder, ROOT, PostgresSettings.forTests());
      server.leaveAlone();
      // prepared now: class loaders may be closed when the hook runs
      List<String> stop = server.stopCommand("immediate");
      Runtime.getRuntime().addShutdownHook(new Thread(() -> end(stop)));
      System.setProperty(PREFIX + "folder", folder.toString());
      System.setProperty(PREFIX + "password", server.password());
      System.setProperty(PREFIX + "port", Integer.toString(server.port()));
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  private static void end(List<String> command) {
    try {
      new ProcessBuilder(command)
          .redirectErrorStream(true)
          .redirectOutput(ProcessBuilder.Redirect.DISCARD)
          .start()
          .waitFor();
    } catch (IOException | InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** Ends and removes what killed test runs left behind. */
  private static void sweep() throws IOException {
    if (!Files.isDirectory(ROOT)) {
      return;
    }
    try (Stream<Path> folders = Files.list(ROOT)) {
      for (Path old : folders.filter(TestServer::isAbandoned).toList()) {
        Postmaster.runningOn(old.resolve("data"))
            .flatMap(found -> ProcessHandle.of(found.pid()))
            .ifPresent(ProcessHandle::destroyForcibly);
        PostgresBinaries.deleteTree(old);
      }
    }
  }

  private static boolean isAbandoned(Path folder) {
    String name = folder.getFileName().toString();
    return name.matches("[0-9]+") && ProcessHandle.of(Long.parseLong(name)).isEmpty();
  }
}
