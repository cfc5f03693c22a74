package club.emberwell.launch;

import club.emberwell.keep.SchemaVersion;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.SQLException;
import javax.sql.DataSource;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.eclipse.microprofile.health.HealthCheck;
import org.eclipse.microprofile.health.HealthCheckResponse;
import org.eclipse.microprofile.health.HealthCheckResponseBuilder;
import org.eclipse.microprofile.health.Readiness;

/** Ready means: the database answers and has the tables this program expects. */
@Readiness
@ApplicationScoped
class SchemaCheck implements HealthCheck {
  @Inject DataSource database;

  @Inject
  @ConfigProperty(name = "emberwell.database.kind")
  String kind;

  @Override
  public HealthCheckResponse call() {
    HealthCheckResponseBuilder answer =
        HealthCheckResponse.named("tables").withData("database", kind);
    try (Connection connection = database.getConnection()) {
      int applied = SchemaVersion.appliedTo(connection);
      int known = SchemaVersion.known();
      return answer
          .withData("version", applied)
          .withData("expected", known)
          .status(applied == known)
          .build();
    } catch (SQLException e) {
      return answer.withData("error", e.getMessage()).down().build();
    }
  }
}
