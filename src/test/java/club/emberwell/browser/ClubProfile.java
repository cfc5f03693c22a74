package club.emberwell.browser;

import io.quarkus.test.junit.QuarkusTestProfile;
import java.util.Map;

/** An application of its own for the browser tests, so that their club stays out of others. */
public final class ClubProfile implements QuarkusTestProfile {
  static final String PASSWORD = "ember and slate 26";
  static final String FOLDER = "browser-scenario";

  @Override
  public Map<String, String> getConfigOverrides() {
    return Map.of(
        "emberwell.demo.password",
        PASSWORD,
        "emberwell.demo.club-name",
        "The Quillmarsh Laser Circle");
  }
}
