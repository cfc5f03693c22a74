package club.emberwell.launch;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/**
 * A database that a verb works on: the configured one, or the built-in one, which is started where
 * it does not run and stopped again.
 */
final class AtHand implements AutoCloseable {
  private static final String NAME = "emberwell";

  private final Database database;
  private Home home;
  private EmbeddedPostgres postgres;

  private AtHand(Database database) {
    this.database = database;
  }

  private AtHand(Home home, EmbeddedPostgres postgres) {
    this.home = home;
    this.postgres = postgres;
    this.database =
        new Database(postgres.jdbcUrl(NAME), EmbeddedPostgres.USER, postgres.password(), true);
  }

  /**
   * The database of the club in a home, whether its server runs or not.
   *
   * @throws LaunchException where there is none
   */
  static AtHand shared(Given given, Path folder) {
    if (Database.configured(given).isEmpty() && !isBuiltInThere(folder)) {
      throw new LaunchException(
          ExitCode.NO_DATABASE, "No club is in the home " + folder + "; name another with --home.");
    }
    return sharedOrNew(given, folder);
  }

  /** The same; where there is none, an empty one is made. */
  static AtHand sharedOrNew(Given given, Path folder) {
    return Database.configured(given)
        .or(() -> running(folder))
        .map(AtHand::answering)
        .orElseGet(() -> builtIn(folder));
  }

  /** The same for this process alone: where a server runs on the home, that is refused. */
  static AtHand alone(Given given, Path folder) {
    Optional<Database> configured = Database.configured(given);
    if (configured.isEmpty()) {
      return builtIn(folder);
    }
    AtHand opened = answering(configured.get());
    opened.home = Home.take(folder);
    return opened;
  }

  /** The built-in one of a home, for this process alone. */
  static AtHand builtIn(Path folder) {
    Home home = Home.take(folder);
    EmbeddedPostgres postgres = EmbeddedPostgres.start(home.folder().resolve("postgres"));
    postgres.createDatabase(NAME);
    return new AtHand(home, postgres);
  }

  /** Whether a home has a built-in database. */
  static boolean isBuiltInThere(Path folder) {
    return Files.exists(folder.resolve("postgres/data/PG_VERSION"));
  }

  /** The built-in one of a home, where it runs. */
  static Optional<Database> running(Path home) {
    Path folder = home.resolve("postgres");
    try {
      if (!isBuiltInThere(home)) {
        return Optional.empty();
      }
      Optional<Postmaster> running = Postmaster.runningOn(folder.toRealPath().resolve("data"));
      String password = Files.readString(folder.resolve("password")).strip();
      return running.map(
          server ->
              new Database(
                  "jdbc:postgresql://127.0.0.1:" + server.port() + "/" + NAME,
                  EmbeddedPostgres.USER,
                  password,
                  true));
    } catch (IOException e) {
      throw new LaunchException(
          ExitCode.NO_DATABASE, "The database in " + folder + " cannot be used: " + e, e);
    }
  }

  private static AtHand answering(Database database) {
    database.requireAnswer();
    return new AtHand(database);
  }

  Database database() {
    return database;
  }

  @Override
  public void close() {
    if (postgres != null) {
      postgres.close();
    }
    try {
      if (home != null) {
        home.close();
      }
    } catch (IOException e) {
      System.err.println("The home could not be let go: " + e.getMessage());
    }
  }
}
