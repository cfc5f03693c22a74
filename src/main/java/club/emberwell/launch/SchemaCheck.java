package club.emberwell.launch;

import club.emberwell.keep.SchemaVersion;
import io.smallrye.health.api.AsyncHealthCheck;
import io.smallrye.mutiny.Uni;
import io.smallrye.mutiny.infrastructure.Infrastructure;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.SQLException;
import javax.sql.DataSource;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.eclipse.microprofile.health.HealthCheckResponse;
import org.eclipse.microprofile.health.HealthCheckResponseBuilder;
import org.eclipse.microprofile.health.Readiness;

/**
 * Ready means: the database answers and has the tables this program expects. Who asks gets an
 * answer in time even where the database gives none.
 */
@Readiness
@ApplicationScoped
class SchemaCheck implements AsyncHealthCheck {
  private static final String NAME = "tables";

  @Inject DataSource database;
  @Inject DatabaseTimes times;

  @Inject
  @ConfigProperty(name = "emberwell.database.kind")
  String kind;

  @Override
  public Uni<HealthCheckResponse> call() {
    return Uni.createFrom()
        .item(this::look)
        .runSubscriptionOn(Infrastructure.getDefaultWorkerPool())
        .ifNoItem()
        .after(times.readiness())
        .recoverWithItem(() -> down("the database does not answer"));
  }

  private HealthCheckResponse look() {
    try (Connection connection = database.getConnection()) {
      DatabasePatience.wait(connection, times.readiness());
      int applied = SchemaVersion.appliedTo(connection);
      int known = SchemaVersion.known();
      return begun()
          .withData("version", applied)
          .withData("expected", known)
          .status(applied == known)
          .build();
    } catch (SQLException e) {
      return down(e.getMessage());
    }
  }

  private HealthCheckResponse down(String why) {
    return begun().withData("error", why).down().build();
  }

  private HealthCheckResponseBuilder begun() {
    return HealthCheckResponse.named(NAME).withData("database", kind);
  }
}
