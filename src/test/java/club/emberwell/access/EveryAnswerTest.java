package club.emberwell.access;

import static io.restassured.RestAssured.given;
import static org.awaitility.Awaitility.await;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasKey;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.startsWith;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People.Person;
import club.emberwell.api.member.Staff;
import club.emberwell.member.Role;
import club.emberwell.member.club.ClubOptions;
import club.emberwell.web.frame.Browser;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.io.IOException;
import java.net.URL;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Queue;
import java.util.UUID;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.logging.Handler;
import java.util.logging.Level;
import java.util.logging.LogRecord;
import java.util.logging.Logger;
import org.jsoup.Jsoup;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What every answer has, whoever gave it: a resource, a file, a probe, the gate before them. */
@QuarkusTest
class EveryAnswerTest {
  private static final String FOREIGN = "X-Forwarded-For";
  private static final String SOMEWHERE = "203.0.113.5";

  @Inject Staff staff;
  @Inject ClubOptions club;

  @TestHTTPResource("/")
  URL server;

  private String raw(String head) throws IOException {
    try (RawCall call = new RawCall(server)) {
      call.send(head + "\r\nHost: localhost\r\nConnection: close\r\n\r\n");
      return call.answer();
    }
  }

  /** As the OWASP secure headers project lists them. */
  @ParameterizedTest
  @CsvSource({
    "GET /about, 200",
    "GET /nothing-here, 404",
    "GET /api/v1/nothing-here, 404",
    "GET /%zz, 400",
    "GET /api/v1/%zz, 400",
    "GET /about?q=%zz, 400",
    "GET /api/v1/reports?q=%, 400",
    "GET /a%00b, 400",
    "GET /api/v1/members/a%00b, 400",
    "GET /api/v1/reports?q=%00, 400",
    "GET /assets/none.css, 404",
    "GET /webjars/none.js, 404",
    "GET /q/health/live, 200",
    "GET /q/health/ready, 200",
    "GET /q/metrics, 200",
    "GET /q/nothing, 404",
    "DELETE /about, 405",
    "OPTIONS /about, 204",
    "GET /api/v1/me, 401",
    "GET /api/test-only/fault, 500",
    "GET /api/test-only/away, 503",
    "GET /api/test-only/full, 507",
    "GET /test-only/elsewhere, 303"
  })
  void hasTheGuards(String request, int status) throws IOException {
    String answer = raw(request + " HTTP/1.1");
    assertTrue(answer.startsWith("HTTP/1.1 " + status + " "), answer);
    guarded(answer);
    assertEquals(
        request.contains("/api/") || request.equals("GET /q/nothing"),
        answer.contains("application/problem+json"),
        answer);
  }

  private static void guarded(String answer) {
    String heads = answer.toLowerCase(Locale.ROOT);
    for (String name :
        List.of(
            "content-security-policy",
            "x-content-type-options",
            "referrer-policy",
            "permissions-policy",
            "cross-origin-opener-policy",
            "cross-origin-resource-policy",
            "x-request-id")) {
      assertTrue(heads.contains("\n" + name + ": "), name + " is missing: " + answer);
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"/about", "/api/v1/tokens"})
  void alsoWhereMoreIsSentThanIsTaken(String path) throws IOException {
    try (RawCall call = new RawCall(server)) {
      call.send(
          "POST %s HTTP/1.1\r\nHost: localhost\r\nContent-Type: text/plain\r\n".formatted(path)
              + "Content-Length: 99000000\r\n\r\n");
      String answer = call.answer();
      assertTrue(answer.startsWith("HTTP/1.1 413 "), answer);
      guarded(answer);
    }
  }

  @Test
  void ourOwnFaultIsToldByTheNameOfTheRequest() {
    Response answer = given().header("X-Request-Id", "of-a-stranger").get("/api/test-only/fault");
    String id = answer.header("X-Request-Id");
    assertNotEquals("of-a-stranger", id);
    answer.then().statusCode(500).body("id", equalTo(id));
    assertNotEquals(id, given().get("/about").header("X-Request-Id"));
  }

  /** A person reads it off the page, and whoever runs the server finds it in the log. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "/nothing-here",
        "/me",
        "/reports/7b0e9c52-8a3c-4a55-9d7e-6a1f1a5e6f11",
        "/about?q=%00",
        "/test-only/broken"
      })
  void aPageThatTellsOfAnErrorNamesItsRequest(String path) {
    Response answer = given().urlEncodingEnabled(false).header("Accept", "text/html").get(path);
    assertTrue(answer.statusCode() >= 400);
    String code = Jsoup.parse(answer.asString()).select("main code").text();
    assertEquals(answer.header("X-Request-Id"), code, answer.asString());
  }

  @ParameterizedTest
  @CsvSource({
    "/api/test-only/fault, request failed",
    "/api/test-only/away, the database cannot answer",
    "/api/test-only/full, there is no room left",
    "/test-only/broken, request failed"
  })
  void aLineOfTheLogNamesTheRequestItTellsOf(String path, String words) {
    try (HeardLog heard = new HeardLog("club.emberwell.access", Level.INFO)) {
      String id = given().get(path).header("X-Request-Id");
      List<String> ids =
          heard.lines().stream()
              .filter(line -> line.text().contains(words))
              .map(HeardLog.Line::request)
              .toList();
      assertEquals(List.of(id), ids);
    }
  }

  @Test
  void metricsAndWhatChecksSayAreForOwnersAndThisMachine() {
    given().get("/q/metrics").then().statusCode(200);
    given().header(FOREIGN, SOMEWHERE).get("/q/metrics").then().statusCode(401);
    String member = People.join().token();
    given()
        .header(FOREIGN, SOMEWHERE)
        .header("Authorization", "Bearer " + member)
        .get("/q/metrics")
        .then()
        .statusCode(403);
    given()
        .header(FOREIGN, SOMEWHERE)
        .header("Authorization", "Bearer " + staff.person(Role.OWNER).token())
        .get("/q/metrics")
        .then()
        .statusCode(200);
    given().get("/q/health").then().statusCode(200).body("$", hasKey("checks"));
    for (String probe : List.of("", "/ready", "/live", "/started")) {
      given()
          .header(FOREIGN, SOMEWHERE)
          .get("/q/health" + probe)
          .then()
          .statusCode(200)
          .body("status", equalTo("UP"))
          .body("$", not(hasKey("checks")));
    }
  }

  /** OWASP ASVS 5.0, V14.3.2; what workshops need without a connection stays on the phone. */
  @Test
  void browsersKeepNothingOfAccountsTheDeskAndLinks() {
    Person owner = staff.person(Role.OWNER);
    Browser browser = Browser.of(owner);
    for (String path :
        List.of("/me", "/me/email", "/desk", "/desk/club", "/inbox", "/watches", "/sign-in")) {
      assertEquals("no-store", browser.get(path).header("Cache-Control"), path);
    }
    for (String path : List.of("/invitation/none", "/reset/none", "/confirm/none")) {
      assertEquals("no-store", given().get(path).header("Cache-Control"), path);
    }
    for (String path : List.of("me", "me/sessions", "tokens", "desk/members", "inbox")) {
      assertEquals("no-store", owner.asks().get("/api/v1/" + path).header("Cache-Control"), path);
    }
    for (String path : List.of("/", "/bench", "/grids", "/post", "/about", "/menagerie")) {
      assertEquals("private, no-cache", browser.get(path).header("Cache-Control"), path);
    }
  }

  /** The description is for whoever may read the club, on whichever address it stands. */
  @Test
  void aClosedClubDescribesItsApiToItsMembersOnly() {
    List<String> words =
        List.of("/api/v1/openapi.json", "/help/api/openapi.json", "/help/api", "/help/api/members");
    club.readingPublic(false);
    try {
      for (String path : words) {
        given().get(path).then().statusCode(401);
        given().header("X-Forwarded-For", "127.0.0.1").get(path).then().statusCode(401);
      }
      People.join().asks().get(words.get(0)).then().statusCode(200);
      Browser member = Browser.of(People.join());
      for (String path : words.subList(1, words.size())) {
        assertEquals(200, member.get(path).status(), path);
      }
    } finally {
      club.readingPublic(true);
    }
    words.forEach(path -> given().get(path).then().statusCode(200));
  }

  @Test
  void metricsCountByTemplates() throws IOException {
    String mark = UUID.randomUUID().toString();
    for (String path : List.of("/", "/api/v1/", "/assets/", "/q/", "/t/", "/%zz", "/q?x=%00")) {
      raw("GET " + path + mark + " HTTP/1.1");
      raw("PUT " + path + mark + " HTTP/1.1");
    }
    String metrics = given().get("/q/metrics").asString();
    assertTrue(metrics.contains("http_server_requests_seconds_count"), metrics);
    assertFalse(metrics.contains(mark), metrics);
  }

  @Test
  void aRedirectIsAPathAndWhatWasMadeIsAtThePublicAddress() {
    given()
        .redirects()
        .follow(false)
        .header("Host", "inner.example")
        .get("/test-only/elsewhere")
        .then()
        .header("Location", equalTo("/about?a=b#here"));
    People.json(Map.of("handle", People.freshHandle(), "password", People.PASSWORD))
        .header("Host", "inner.example")
        .post("/api/v1/members")
        .then()
        .statusCode(201)
        .header("Location", startsWith("http://127.0.0.1:8080/api/v1/members/"));
  }

  @Test
  void aReaderWhoLeavesCostsNoErrorInTheLog() throws Exception {
    Queue<String> told = new ConcurrentLinkedQueue<>();
    Handler listener = new Listener(told);
    Logger root = Logger.getLogger("");
    root.addHandler(listener);
    try {
      for (int i = 0; i < 5; i++) {
        RawCall call = new RawCall(server);
        call.send("GET /api/test-only/long HTTP/1.1\r\nHost: localhost\r\n\r\n");
        assertEquals("HTTP/1.1 200 OK", call.line());
        call.reset();
      }
      // the writers notice within a second
      await().during(Duration.ofSeconds(3)).atMost(Duration.ofSeconds(10)).until(told::isEmpty);
    } finally {
      root.removeHandler(listener);
    }
  }

  /** Hears what an operator would be told. */
  private static final class Listener extends Handler {
    private final Queue<String> told;

    Listener(Queue<String> told) {
      this.told = told;
    }

    @Override
    public void publish(LogRecord line) {
      if (line.getLevel().intValue() >= Level.WARNING.intValue()) {
        told.add(line.getLoggerName() + ": " + line.getMessage() + " " + line.getThrown());
      }
    }

    @Override
    public void flush() {
      // kept as it comes
    }

    @Override
    public void close() {
      // nothing is open
    }
  }
}
