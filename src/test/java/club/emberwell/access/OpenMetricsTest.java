package club.emberwell.access;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.hasKey;

import club.emberwell.member.club.ClubOptions;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** A closed club whose operator opened metrics and health to everybody. */
@QuarkusTest
@TestProfile(OpenMetricsTest.Opened.class)
class OpenMetricsTest {
  /** The setting. */
  public static class Opened implements QuarkusTestProfile {
    @Override
    public Map<String, String> getConfigOverrides() {
      return Map.of("emberwell.metrics.open", "true");
    }
  }

  @Inject ClubOptions club;

  @AfterEach
  void openAgain() {
    club.readingPublic(true);
  }

  @Test
  void strangersSeeMetricsAndChecksAndNothingElse() {
    club.readingPublic(false);
    given().header("X-Forwarded-For", "203.0.113.5").get("/q/metrics").then().statusCode(200);
    for (String probe : List.of("", "/ready", "/live", "/started")) {
      given()
          .header("X-Forwarded-For", "203.0.113.5")
          .get("/q/health" + probe)
          .then()
          .body("$", hasKey("checks"));
    }
    for (String path : List.of("/api/v1/openapi.json", "/help/api/openapi.json", "/help/api")) {
      given().get(path).then().statusCode(401);
    }
  }
}
