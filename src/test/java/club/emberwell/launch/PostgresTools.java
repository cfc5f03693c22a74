package club.emberwell.launch;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;

/** The tools that come with a {@link DebianPostgres}, used as an operator does. */
final class PostgresTools {
  /** The club's account: it owns its database and nothing else. */
  static final String OWNER = "club";

  static final String ADMIN = DebianPostgres.USER;
  private static final int PATIENCE_SECONDS = 180;

  private final DebianPostgres server;

  PostgresTools(DebianPostgres server) throws Exception {
    this.server = server;
    server.execute("create role club login");
  }

  void create(String database) throws IOException {
    run("createdb", "-U", ADMIN, "-O", OWNER, database);
  }

  void drop(String database) throws IOException {
    run("dropdb", "-U", ADMIN, "--force", "--if-exists", database);
  }

  String url(String database) {
    return "jdbc:postgresql://127.0.0.1:" + server.port + "/" + database;
  }

  void admin(String sql) throws Exception {
    server.execute(sql);
  }

  /** The answer, a row a line. */
  String ask(String database, String sql) throws IOException {
    return run("psql", "-U", OWNER, "-At", "-c", sql, database).strip();
  }

  /** Writes a dump as people make it. */
  void dump(String database, Path file, String... options) throws IOException {
    List<String> words = new ArrayList<>(List.of("-U", OWNER, "-f", file.toString()));
    words.addAll(List.of(options));
    words.add(database);
    run("pg_dump", words.toArray(String[]::new));
  }

  void restore(String user, String database, Path dump) throws IOException {
    try {
      run("psql", "-U", user, "-q", "-v", "ON_ERROR_STOP=1", "-f", dump.toString(), database);
    } catch (IOException e) {
      // under a running program it may be the one that PostgreSQL sends away; people do it again
      if (!e.getMessage().contains("deadlock detected")) {
        throw e;
      }
      restore(user, database, dump);
    }
  }

  /** Runs a program; answers what it prints. */
  private String run(String program, String... words) throws IOException {
    List<String> line = new ArrayList<>(List.of(DebianPostgres.program(program)));
    line.addAll(List.of(words));
    Path out = Files.createTempFile("emberwell-tool-", ".out");
    ProcessBuilder builder = new ProcessBuilder(line).redirectErrorStream(true);
    builder.redirectOutput(out.toFile());
    String port = Integer.toString(server.port);
    builder.environment().putAll(Map.of("PGHOST", "127.0.0.1", "PGPORT", port));
    Process process = builder.start();
    try {
      boolean ended = process.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS);
      String said = Files.readString(out);
      if (!ended || process.exitValue() != 0) {
        process.destroyForcibly();
        throw new IOException(String.join(" ", line) + " says: " + said);
      }
      return said;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException(e);
    } finally {
      Files.delete(out);
    }
  }
}
