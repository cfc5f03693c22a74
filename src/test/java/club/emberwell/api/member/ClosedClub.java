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
        "emberwell.limits.door.code-address",
        "1000 in 1H, then 2S to 15M",
        "emberwell.limits.link.tried",
        "1000 in 1H, then 2S to 15M",
        "emberwell.limits.door.invite",
        "20 in 1H, then 30S to 1H");
  }
}
