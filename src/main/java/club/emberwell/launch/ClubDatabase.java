package club.emberwell.launch;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import java.util.Optional;

/**
 * The database of a home's club for a verb, whether its server runs or not: the one the operator
 * named; the built-in one, as long as it runs; else the built-in one started for the verb alone.
 */
final class ClubDatabase implements AutoCloseable {
  private static final Duration PATIENCE = Duration.ofSeconds(15);

  private final Database database;
  private final Home held;
  private final EmbeddedPostgres started;

  private ClubDatabase(Database database, Home held, EmbeddedPostgres started) {
    this.database = database;
    this.held = held;
    this.started = started;
  }

  /**
   * Finds it, and starts it where it must.
   *
   * @throws LaunchException where there is none
   */
  static ClubDatabase of(Given given, Path home) {
    if (Database.configured(given).isEmpty() && !isBuiltInThere(home)) {
      throw nothing(home);
    }
    return orNew(given, home);
  }

  /** The same; where there is none, an empty one is made. */
  static ClubDatabase orNew(Given given, Path home) {
    return Database.configured(given)
        .or(() -> running(home))
        .map(database -> new ClubDatabase(database, null, null))
        .orElseGet(() -> builtIn(home));
  }

  /** The same for this process alone: where a server runs on the home, that is refused. */
  static ClubDatabase alone(Given given, Path home) {
    return Database.configured(given)
        .map(database -> new ClubDatabase(database, Home.take(home), null))
        .orElseGet(() -> builtIn(home));
  }

  /** The built-in one of a home for this process alone, started, and made where there is none. */
  static ClubDatabase builtIn(Path home) {
    Home held = Home.take(home);
    try {
      EmbeddedPostgres postgres = held.postgres();
      postgres.createDatabase(EmbeddedPostgres.DATABASE);
      return new ClubDatabase(builtIn(postgres.port(), postgres.password()), held, postgres);
    } catch (LaunchException e) {
      letGo(held);
      throw e;
    }
  }

  /** Whether a home has a built-in database. */
  static boolean isBuiltInThere(Path home) {
    return Files.exists(home.resolve(PostgresData.FOLDER).resolve("data/PG_VERSION"));
  }

  /** The built-in one of a home, where it runs. */
  private static Optional<Database> running(Path home) {
    if (!isBuiltInThere(home)) {
      return Optional.empty();
    }
    Path folder = home.resolve(PostgresData.FOLDER);
    try {
      Optional<Postmaster> running = Postmaster.runningOn(folder.toRealPath().resolve("data"));
      if (running.isEmpty()) {
        return Optional.empty();
      }
      String password =
          Files.readString(folder.resolve("password"), StandardCharsets.UTF_8).strip();
      return Optional.of(builtIn(running.get().port(), password));
    } catch (IOException e) {
      throw new LaunchException(
          ExitCode.NO_DATABASE,
          "The built-in database of " + home + " cannot be looked at: " + e + ".",
          e);
    }
  }

  private static LaunchException nothing(Path home) {
    String elsewhere =
        ClubMark.inHome(home)
            .map(mark -> "its club was last in " + mark.database())
            .orElse("no server has run on it");
    return new LaunchException(
        ExitCode.NO_DATABASE,
        "There is no built-in database in the home "
            + home
            + " ("
            + elsewhere
            + "); name another with --home, or set EMBERWELL_DATABASE_URL, _USER and _PASSWORD as"
            + " its server has them.");
  }

  private static Database builtIn(int port, String password) {
    return new Database(
        "jdbc:postgresql://127.0.0.1:" + port + "/" + EmbeddedPostgres.DATABASE,
        EmbeddedPostgres.USER,
        password,
        true);
  }

  /** Whether it was started for this verb, as no server of this home runs. */
  boolean startedForThis() {
    return started != null;
  }

  Database database() {
    return database;
  }

  /**
   * The same, once it answers.
   *
   * @throws LaunchException where it does not
   */
  ClubDatabase answering() {
    try {
      database.requireAnswer();
      return this;
    } catch (LaunchException e) {
      close();
      throw e;
    }
  }

  /**
   * A connection, whatever the tables are like.
   *
   * @throws LaunchException where the database does not answer
   */
  Connection connect() {
    return database.connect(PATIENCE);
  }

  /**
   * A connection to tables this program knows.
   *
   * @throws LaunchException where they are of another version
   */
  Connection connectToKnownTables() throws SQLException {
    Connection connection = connect();
    try {
      Schema.requireSame(connection);
      return connection;
    } catch (LaunchException e) {
      connection.close();
      throw e;
    }
  }

  @Override
  public void close() {
    if (started != null) {
      started.close();
    }
    if (held != null) {
      letGo(held);
    }
  }

  private static void letGo(Home held) {
    try {
      held.close();
    } catch (IOException e) {
      throw new LaunchException(ExitCode.FAILED, "The home could not be let go: " + e, e);
    }
  }
}
