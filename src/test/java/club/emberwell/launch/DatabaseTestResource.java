package club.emberwell.launch;

import club.emberwell.contract.HeldToContract;
import io.quarkus.test.common.QuarkusTestResourceLifecycleManager;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;

/**
 * Gives every {@code @QuarkusTest} a database: one server per test JVM below {@code target}, one
 * fresh database and home per start of the application.
 */
public class DatabaseTestResource implements QuarkusTestResourceLifecycleManager {

  @Override
  public Map<String, String> start() {
    HeldToContract.install();
    TestServer server = TestServer.shared();
    String database = server.freshDatabase();
    Map<String, String> config = new HashMap<>();
    config.put("quarkus.datasource.jdbc.url", server.jdbcUrl(database));
    config.put("quarkus.datasource.username", EmbeddedPostgres.USER);
    config.put("quarkus.datasource.password", server.password());
    config.put("emberwell.home", home(server, database).toString());
    return config;
  }

  @Override
  public void stop() {
    // the server is shared by all starts of the application; it ends with the JVM
  }

  private static Path home(TestServer server, String database) {
    try {
      return Files.createDirectories(server.folder().resolve("home-" + database));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
