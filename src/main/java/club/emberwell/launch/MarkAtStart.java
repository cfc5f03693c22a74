package club.emberwell.launch;

import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.Optional;
import java.util.UUID;
import javax.sql.DataSource;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jboss.logging.Logger;

/** Has the home and the database say which club they hold, once the tables are there. */
@ApplicationScoped
class MarkAtStart {
  private static final Logger LOG = Logger.getLogger(MarkAtStart.class);

  private final DataSource database;
  private final Path home;
  private final String url;
  private final String publicUrl;

  MarkAtStart(
      DataSource database,
      @ConfigProperty(name = "emberwell.home") Path home,
      @ConfigProperty(name = "emberwell.database.kind") String kind,
      @ConfigProperty(name = "quarkus.datasource.jdbc.url") String url,
      @ConfigProperty(name = "emberwell.public-url") String publicUrl) {
    this.database = database;
    this.home = home;
    // the port of the built-in one is another at each start
    this.url = kind.equals("built-in") ? "the built-in database" : url.replaceAll("\\?.*", "");
    this.publicUrl = publicUrl;
  }

  void mark(@Observes StartupEvent started) {
    Optional<UUID> ofHome = ClubMark.inHome(home).map(ClubMark::club);
    try (Connection connection = database.getConnection()) {
      UUID club = ClubMark.settle(connection, ofHome.orElseGet(UUID::randomUUID));
      if (ofHome.isPresent() && !ofHome.get().equals(club)) {
        LOG.warnf("The home %s was of another club than the database; it is %s now", home, club);
      }
      new ClubMark(club, url, publicUrl).keepIn(Files.createDirectories(home));
    } catch (SQLException | IOException e) {
      throw new IllegalStateException("the mark of the club cannot be kept", e);
    }
  }
}
