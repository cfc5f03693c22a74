package club.emberwell.keep;

import io.quarkus.test.junit.QuarkusTestProfile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.Map;
import java.util.stream.Stream;

/** A club that keeps two backups of each kind, in a folder of its own. */
public final class TwoStay implements QuarkusTestProfile {
  /** All of them. */
  public static final Path PLACE = Path.of("target", "kept-backups").toAbsolutePath();

  @Override
  public Map<String, String> getConfigOverrides() {
    return Map.of("emberwell.backup.dir", PLACE.toString(), "emberwell.backup.keep", "2");
  }

  /** Deletes all of them. */
  public static void clear() throws IOException {
    if (Files.exists(PLACE)) {
      try (Stream<Path> files = Files.walk(PLACE)) {
        for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
          Files.delete(file);
        }
      }
    }
  }
}
