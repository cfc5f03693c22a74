package club.emberwell.launch;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import org.eclipse.microprofile.health.HealthCheckResponse;
import org.eclipse.microprofile.health.HealthCheckResponse.Status;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whether there is room, by more or less than any disk has. */
class StorageCheckTest {
  @TempDir Path home;

  @Test
  void readinessSaysThatTheDiskIsFull() {
    assertEquals(Status.UP, new StorageCheck(() -> 1, home).call().getStatus());
    HealthCheckResponse full = new StorageCheck(() -> Long.MAX_VALUE, home).call();
    assertEquals(Status.DOWN, full.getStatus());
    assertEquals("disk full", full.getData().orElseThrow().get("error"));
  }
}
