package club.emberwell.browser;

import io.quarkus.test.junit.QuarkusTestProfile;
import java.util.Map;

/** The whole invented club, for the pictures of the README. */
public final class SeedProfile implements QuarkusTestProfile {
  @Override
  public Map<String, String> getConfigOverrides() {
    return Map.of("emberwell.demo.password", ClubProfile.PASSWORD);
  }
}
