package club.emberwell.launch;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.eclipse.microprofile.health.HealthCheck;
import org.eclipse.microprofile.health.HealthCheckResponse;
import org.eclipse.microprofile.health.HealthCheckResponseBuilder;
import org.eclipse.microprofile.health.Readiness;

/** Ready means: there is room where the home is, for the index and for the built-in database. */
@Readiness
@ApplicationScoped
class StorageCheck implements HealthCheck {
  /** How much room is needed. */
  @ConfigMapping(prefix = "emberwell.limits.disk")
  interface Room {
    /** Bytes; a merge of the index and the database's own log want some at any time. */
    @WithDefault("104857600")
    long spare();
  }

  private final Room room;
  private final Path home;

  StorageCheck(Room room, @ConfigProperty(name = "emberwell.home") Path home) {
    this.room = room;
    this.home = home;
  }

  @Override
  public HealthCheckResponse call() {
    HealthCheckResponseBuilder answer = HealthCheckResponse.named("room on the disk");
    try {
      Files.createDirectories(home);
      long free = Files.getFileStore(home).getUsableSpace();
      answer.withData("free bytes", free);
      return free >= room.spare() ? answer.up().build() : down(answer, "disk full");
    } catch (IOException e) {
      return down(answer, e.toString());
    }
  }

  private static HealthCheckResponse down(HealthCheckResponseBuilder answer, String why) {
    return answer.withData("error", why).down().build();
  }
}
