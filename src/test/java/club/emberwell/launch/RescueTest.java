package club.emberwell.launch;

import static io.restassured.RestAssured.given;
import static org.awaitility.Awaitility.await;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.member.club.ClubOptions;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Map;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@QuarkusTest
class RescueTest {
  private static final Address NEAR = new Address("127.0.0.1", 8080);

  @ConfigProperty(name = "quarkus.datasource.jdbc.url")
  String url;

  @ConfigProperty(name = "quarkus.datasource.username")
  String user;

  @ConfigProperty(name = "quarkus.datasource.password")
  String password;

  @Inject ClubOptions club;

  @TempDir Path home;

  private Rescue rescue() {
    return new Rescue(
        new Given(
            Map.of(
                "EMBERWELL_DATABASE_URL", url,
                "EMBERWELL_DATABASE_USER", user,
                "EMBERWELL_DATABASE_PASSWORD", password,
                "EMBERWELL_PUBLIC_URL", "https://club.example")),
        home,
        NEAR);
  }

  @Test
  void aLinkMadeOnTheMachineSetsANewPassword() {
    Person person = People.join();
    String link = rescue().resetLink(person.handle().toUpperCase(java.util.Locale.ROOT));
    assertTrue(link.startsWith("https://club.example/reset/"), link);
    People.json(
            Map.of(
                "link", link.substring(link.lastIndexOf('/') + 1), "password", "lamp oil at dusk"))
        .post("/api/v1/password-resets/redeem")
        .then()
        .statusCode(204);
    People.json(Map.of("handle", person.handle(), "password", "lamp oil at dusk", "label", "test"))
        .post("/api/v1/tokens")
        .then()
        .statusCode(201);
  }

  @Test
  void anUnknownNameIsSaid() {
    LaunchException said =
        assertThrows(LaunchException.class, () -> rescue().resetLink("nobody-at-all"));
    assertEquals("No active member is called nobody-at-all.", said.getMessage());
  }

  @Test
  void localSignInIsSwitchedOnFromTheMachine() {
    club.localSignIn(false);
    try {
      given().get("/reset").then().statusCode(404);
      rescue().localSignIn();
      // a node's copy of the settings is some seconds old at most
      await()
          .atMost(Duration.ofSeconds(30))
          .until(() -> given().get("/api/v1/club").path("localSignIn"), equalTo(true));
    } finally {
      club.localSignIn(true);
    }
  }

  @Test
  void withoutARunningServerTheHomeIsNamed() {
    LaunchException said =
        assertThrows(
            LaunchException.class,
            () -> new Rescue(new Given(Map.of()), home, NEAR).resetLink("somebody"));
    assertTrue(said.getMessage().contains(home.toString()), said.getMessage());
  }
}
