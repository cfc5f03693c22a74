package club.emberwell.api.member;

import io.quarkus.test.junit.QuarkusTestProfile;
import java.util.Map;

/** A club with a database of its own, because its settings are the whole club's. */
public class ClosedClub implements QuarkusTestProfile {
  @Override
  public Map<String, String> getConfigOverrides() {
    return Map.of(
        "emberwell.first.door",
        "invitation",
        "emberwell.limits.door.code-address.free",
        "1000",
        "emberwell.limits.door.invite.free",
        "20");
  }
}
