package club.emberwell.access;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.HeardLog.Line;
import club.emberwell.access.People.Person;
import club.emberwell.access.problem.ProblemKind;
import club.emberwell.web.frame.Browser;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import java.io.IOException;
import java.net.URL;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.logging.Level;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Who asked for more than they may, in the log (OWASP ASVS 5.0, V16.3.2, V16.3.3 and V16.2.1). */
@QuarkusTest
class RefusalLogTest {
  private HeardLog heard;

  @TestHTTPResource("/")
  URL server;

  @BeforeEach
  void listen() {
    heard = new HeardLog("emberwell.refused", Level.INFO);
  }

  @AfterEach
  void deaf() {
    heard.close();
  }

  /** The one line that tells of a request. */
  private String of(Response answer) {
    return of(answer.header("X-Request-Id"));
  }

  private String of(String id) {
    List<String> found =
        heard.lines().stream().filter(line -> id.equals(line.request())).map(Line::text).toList();
    assertEquals(1, found.size(), id + ": " + heard.lines());
    return found.get(0);
  }

  private static String line(String kind, String method, String route, String member) {
    return "event=refused kind=%s method=%s route=%s member=%s network=127.0.0.0/24"
        .formatted(kind, method, route, member);
  }

  @Test
  void whoHasNotTheRightIsOneLineByTheRequestTheRouteAndTheAccount() {
    Person person = People.join();
    assertEquals(
        line("role-missing", "GET", "/api/v1/desk/members", person.id()),
        of(person.asks().get("/api/v1/desk/members")));
    assertEquals(
        line("role-missing", "GET", "/desk/club", person.id()),
        of(Browser.of(person).get("/desk/club").header("X-Request-Id")));
    assertEquals(
        line("token-unknown", "GET", "/api/v1/members/{id}", "stranger"),
        of(given().header("Authorization", "Bearer ew_no").get("/api/v1/members/" + person.id())));
  }

  @Test
  void whatAGuardKeepsOutIsALineWithoutWhatWasSent() throws IOException {
    Response foreign =
        given()
            .header("Origin", "https://elsewhere.example")
            .formParam("handle", "my-secret-by-mistake")
            .post("/sign-in");
    assertEquals(line("foreign-form", "POST", "/sign-in", "stranger"), of(foreign));
    Response unknown =
        People.json(Map.of("handle", "x", "password", "my-secret-by-mistake", "role", "owner"))
            .post("/api/v1/members");
    assertEquals(line("unknown-field", "POST", "/api/v1/members", "stranger"), of(unknown));
    try (RawCall call = new RawCall(server)) {
      call.send("GET /reset/my-secret-by-mistake%zz HTTP/1.1\r\nHost: localhost\r\n\r\n");
      call.line();
    }
    assertTrue(heard.texts().contains(line("invalid-request", "GET", "-", "stranger")));
    assertFalse(heard.texts().toString().contains("mistake"));
  }

  @Test
  void whoOnlyHasToSignInOrFindsNothingIsNone() {
    given().get("/api/v1/me").then().statusCode(401);
    given().get("/me").then().statusCode(401);
    given().get("/nothing-here").then().statusCode(404);
    assertEquals(List.of(), heard.texts());
  }

  @Test
  void ofManyInAMinuteSomeAreToldAndTheRestIsCounted() {
    RefusalPace pace = new RefusalPace(3, Duration.ofMinutes(1));
    Instant at = Instant.parse("2026-11-27T08:00:00Z");
    for (int i = 0; i < 3; i++) {
      assertEquals(OptionalLong.of(0), pace.tell(ProblemKind.TOO_FAST, at));
    }
    for (int i = 0; i < 5; i++) {
      assertEquals(OptionalLong.empty(), pace.tell(ProblemKind.TOO_FAST, at.plusSeconds(59)));
    }
    assertEquals(OptionalLong.of(0), pace.tell(ProblemKind.ROLE_MISSING, at.plusSeconds(59)));
    assertEquals(OptionalLong.of(5), pace.tell(ProblemKind.TOO_FAST, at.plusSeconds(60)));
    assertEquals(OptionalLong.of(0), pace.tell(ProblemKind.TOO_FAST, at.plusSeconds(61)));
  }
}
