package club.emberwell.launch;

import club.emberwell.access.traffic.ConnectionGuard;
import io.quarkus.runtime.Application;
import io.quarkus.runtime.Quarkus;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.jboss.logging.Logger;

/** One run of the server: home taken, database there, application open; all undone in reverse. */
final class Server {
  private static final Logger LOG = Logger.getLogger(Server.class);
  private static final Duration CLOSING = Duration.ofSeconds(40);

  private final Given given;
  private final Address address;
  private final boolean networkAllowed;
  private final boolean asNew;
  private Home home;
  private EmbeddedPostgres postgres;
  private boolean closed;

  /**
   * A server to run.
   *
   * @param networkAllowed whether the built-in database may serve an application that other
   *     machines can reach
   * @param asNew whether the home takes the mark of whatever database there is
   */
  Server(Given given, Address address, boolean networkAllowed, boolean asNew) {
    this.given = given;
    this.address = address;
    this.networkAllowed = networkAllowed;
    this.asNew = asNew;
  }

  /** Runs until the process is told to stop; does not come back. */
  void run(Path folder) {
    requirePublicUrl();
    requireDatabaseForNetwork();
    given.publish();
    FrameworkSettings.require(given);
    home = Home.take(folder);
    Runtime.getRuntime().addShutdownHook(new Thread(this::close, "close-database-last"));
    try {
      address.requireFree();
      Optional<ClubMark> mark = asNew ? Optional.empty() : ClubMark.inHome(home.folder());
      Database database = Database.configured(given).orElseGet(() -> builtIn(mark));
      requireFitting(database, mark);
      publish(database);
    } catch (LaunchException e) {
      close();
      throw e;
    }
    Quarkus.run(null, Server::exit);
  }

  private void requireFitting(Database database, Optional<ClubMark> mark) {
    try (Connection connection = database.connect(patience())) {
      Schema.requireNotNewer(connection);
      if (mark.isPresent()) {
        mark.get().requireIn(connection, home.folder());
      } else {
        ClubMark.forget(home.folder());
      }
      new BeforeUpgrade(given, home.folder()).keep(database, connection);
    } catch (SQLException | IOException e) {
      throw new LaunchException(
          ExitCode.NO_DATABASE, "The database cannot be read: " + e.getMessage() + ".", e);
    }
  }

  private Duration patience() {
    String seconds = given.valueOrDefault("emberwell.database.wait-seconds");
    return Duration.ofSeconds(Integer.parseInt(seconds));
  }

  private void requirePublicUrl() {
    if (given.value("emberwell.public-url").isEmpty() && !address.isLoopback()) {
      throw new LaunchException(
          ExitCode.WRONG_SETTING,
          "Other machines can reach "
              + address.host()
              + ": set EMBERWELL_PUBLIC_URL to the address members use.");
    }
  }

  private void requireDatabaseForNetwork() {
    boolean builtIn = Database.configured(given).isEmpty();
    if (builtIn && !address.isLoopback() && !networkAllowed) {
      throw new LaunchException(
          ExitCode.WRONG_SETTING,
          "The built-in database is for one machine: set EMBERWELL_DATABASE_URL, or say"
              + " --built-in-database if this club is small and its home is backed up.");
    }
  }

  private Database builtIn(Optional<ClubMark> mark) {
    Path folder = home.folder().resolve(PostgresData.FOLDER);
    if (!Files.exists(folder)) {
      if (mark.isPresent()) {
        throw mark.get().other(home.folder(), "but there is no built-in database");
      }
      System.out.println("Preparing a database in " + folder + " (once)");
    }
    postgres = home.postgres();
    postgres.createDatabase(EmbeddedPostgres.DATABASE);
    return new Database(
        postgres.jdbcUrl(EmbeddedPostgres.DATABASE),
        EmbeddedPostgres.USER,
        postgres.password(),
        true);
  }

  private void publish(Database database) {
    System.setProperty("emberwell.home", home.folder().toString());
    // so that access.traffic.ConnectionGuard sees connections as they are accepted
    System.setProperty("io.netty.bootstrap.extensions", "serviceload");
    // access.WellFormed looks at addresses, and answers in full
    System.setProperty("vertx.disableURIValidation", "true");
    System.setProperty("emberwell.host", address.host());
    System.setProperty("emberwell.port", Integer.toString(address.port()));
    System.setProperty("emberwell.database.kind", database.builtIn() ? "built-in" : "configured");
    System.setProperty("quarkus.datasource.jdbc.url", database.url());
    System.setProperty("quarkus.datasource.username", database.user());
    System.setProperty("quarkus.datasource.password", database.password());
    System.setProperty(
        "quarkus.log.console.json.enabled",
        Boolean.toString("json".equals(given.valueOrDefault("emberwell.log.format"))));
    given.value("emberwell.trusted-proxies").map(Server::believing).ifPresent(Server::publish);
  }

  private static void publish(Map<String, String> settings) {
    settings.forEach(System::setProperty);
  }

  /** What makes the application believe the forwarded headers of these proxies alone. */
  static Map<String, String> believing(String proxies) {
    return Map.of(
        "emberwell.trusted-proxies",
        proxies,
        "quarkus.http.proxy.proxy-address-forwarding",
        "true",
        "quarkus.http.proxy.trusted-proxies",
        proxies);
  }

  private static void exit(int code, Throwable failure) {
    if (failure == null) {
      System.exit(code);
    }
    LOG.error("The application did not start", failure);
    System.exit(ExitCode.FAILED.number());
  }

  /**
   * Shutdown hooks run side by side, so this one first waits for the application to close, even
   * where its own hook was faster and it is closing already. One that failed to start is closed.
   */
  private synchronized void close() {
    if (closed) {
      return;
    }
    closed = true;
    // else requests go on coming for as long as those that came before are waited for
    ConnectionGuard.stopAccepting();
    Application application = Application.currentApplication();
    if (application != null) {
      CompletableFuture.runAsync(application::awaitShutdown)
          .orTimeout(CLOSING.toSeconds(), TimeUnit.SECONDS)
          .exceptionally(late -> null)
          .join();
    }
    if (postgres != null) {
      postgres.close();
    }
    try {
      home.close();
    } catch (IOException e) {
      System.err.println("The home could not be let go: " + e.getMessage());
    }
  }
}
