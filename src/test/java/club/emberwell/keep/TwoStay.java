package club.emberwell.keep;

import io.quarkus.test.junit.QuarkusTestProfile;
import java.nio.file.Path;
import java.util.Map;

/** A club that keeps two backups of each kind, in a folder of its own. */
public final class TwoStay implements QuarkusTestProfile {
  /** All of them. */
  public static final Path PLACE = Path.of("target", "kept-backups").toAbsolutePath();

  @Override
  public Map<String, String> getConfigOverrides() {
    return Map.of("emberwell.backup.dir", PLACE.toString(), "emberwell.backup.keep", "2");
  }
}
