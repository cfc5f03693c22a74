package club.emberwell.access;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People.Person;
import club.emberwell.member.club.ClubOptions;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.io.IOException;
import java.net.HttpURLConnection;
import java.net.URL;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** HTTP as RFC 9110 says, and who may read from where. */
@QuarkusTest
class HttpStandardsTest {
  private static final String SEARCH = "/api/v1/reports?material=birch-plywood";
  private static final String CONSENSUS = "/api/v1/consensus?material=birch-plywood";

  @Inject ClubOptions club;
  @Inject ObjectMapper json;

  @Test
  void aTimeHasSixDecimalsWhateverTheClockSays() throws JsonProcessingException {
    String whole = json.writeValueAsString(Instant.parse("2026-11-25T08:00:00Z"));
    assertEquals("\"2026-11-25T08:00:00.000000Z\"", whole);
    String fine = json.writeValueAsString(Instant.parse("2026-11-25T08:00:00.123456789Z"));
    assertEquals("\"2026-11-25T08:00:00.123456Z\"", fine);
  }

  @TestHTTPResource("/")
  URL server;

  @AfterEach
  void readInPublic() {
    club.readingPublic(true);
  }

  private static Map<String, Object> machine(String name) {
    Map<String, Object> machine = new HashMap<>();
    machine.put("name", name);
    machine.put("source", "co2");
    machine.put("wavelength", "10.6 um");
    machine.put("ratedPower", "40 W");
    machine.put("motion", "gantry");
    machine.put("regime", "cw");
    return machine;
  }

  private static String machineOf(Person person) {
    return "/api/v1/machines/" + post(person, "/api/v1/machines", machine("Shed tube"));
  }

  private static String post(Person person, String path, Object body) {
    return person
        .asks()
        .header("Idempotency-Key", UUID.randomUUID().toString())
        .body(body)
        .post(path)
        .then()
        .statusCode(201)
        .extract()
        .path("id");
  }

  private static Set<String> names(String header) {
    return new TreeSet<>(List.of(header.split(", ")));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "/api/v1/materials | PUT | GET, HEAD, OPTIONS",
        "/api/v1/reports | DELETE | GET, HEAD, OPTIONS, POST",
        "/api/v1/reports/0190a2f0-1c5e-7b3a-8f00-5e2d9c4b7a11 | POST |"
            + " DELETE, GET, HEAD, OPTIONS, PUT",
        "/api/v1/inbox | PATCH | GET, HEAD, OPTIONS",
        "/api/v1/tokens | PUT | POST, OPTIONS, GET, HEAD",
        "/about | DELETE | GET, HEAD, OPTIONS",
        "/sign-in | PUT | GET, HEAD, OPTIONS, POST"
      })
  void anAddressNamesItsMethods(String path, String refused, String allowed) {
    Response options = given().options(path);
    assertEquals(204, options.statusCode());
    String told = options.header("Allow");
    if (!path.endsWith("/tokens")) {
      assertEquals(names(allowed), names(told));
    }
    Person ada = People.join();
    Response answer = ada.asks().body(Map.of()).request(refused, path);
    assertEquals(405, answer.statusCode());
    assertEquals(told, answer.header("Allow"));
  }

  @Test
  void whereNothingIsThereAreNoMethods() {
    given().options("/api/v1/nothing").then().statusCode(404).header("Allow", nullValue());
  }

  @ParameterizedTest
  @ValueSource(strings = {"/api/v1/materials", SEARCH, "/about"})
  void headIsGetWithoutItsBody(String path) {
    Response get = given().get(path);
    Response head = given().head(path);
    assertEquals(get.statusCode(), head.statusCode());
    assertEquals("", head.asString());
    for (String name : List.of("ETag", "Vary", "Cache-Control")) {
      assertEquals(get.header(name), head.header(name), name);
    }
  }

  @Test
  void every401SaysHowToSignIn() {
    given().get("/api/v1/me").then().statusCode(401).header("WWW-Authenticate", notNullValue());
    given()
        .header("Authorization", "Bearer nonsense")
        .get("/api/v1/materials")
        .then()
        .statusCode(401)
        .header("WWW-Authenticate", containsString("invalid_token"));
    People.json(Map.of("handle", "nobody-at-all", "password", "wrong one", "label", "x"))
        .post("/api/v1/tokens")
        .then()
        .statusCode(401)
        .header("WWW-Authenticate", notNullValue());
    club.readingPublic(false);
    given().get(SEARCH).then().statusCode(401).header("WWW-Authenticate", notNullValue());
  }

  @Test
  void aTagIsComparedWeaklyWhateverAProxyMadeOfIt() {
    Person ada = People.join();
    String path = machineOf(ada);
    String tag = ada.asks().get(path).then().statusCode(200).extract().header("ETag");
    String bare = tag.substring(1, tag.length() - 1).replace("-gzip", "");
    assertTrue(bare.matches("1-[0-9a-f]{16}"), "nothing at its end that a proxy's suffix takes");
    for (String held :
        List.of(
            tag,
            "W/" + tag,
            "\"" + bare + "\"",
            "\"" + bare + "-gzip\"",
            "W/\"" + bare + ";gzip\"",
            "\"other\", W/\"" + bare + "--br\" , \"third\"",
            "*")) {
      Response answer = ada.asks().header("If-None-Match", held).get(path);
      assertEquals(304, answer.statusCode(), held);
      assertEquals("", answer.asString());
      assertEquals(tag, answer.header("ETag"));
      assertTrue(answer.header("Vary").contains("Accept-Encoding"));
      assertEquals("private, no-cache", answer.header("Cache-Control"));
    }
    for (String other : List.of("\"1\"", "\"other\"", "nonsense", "\"" + bare + "x\"")) {
      ada.asks().header("If-None-Match", other).get(path).then().statusCode(200);
    }
    ada.asks().header("If-Match", "\"1\"").body(machine("Barn tube")).put(path);
    ada.asks().header("If-None-Match", tag).get(path).then().statusCode(200);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"\"1\"", "W/\"1\"", "\"1-abc\"", "\"1-abc-gzip\"", "W/\"1-a\"", "\"0\", \"1\""})
  void aVersionIsKnownByItsNumber(String tag) {
    Person ada = People.join();
    String path = machineOf(ada);
    ada.asks()
        .header("If-Match", tag)
        .body(machine("Barn tube"))
        .put(path)
        .then()
        .statusCode(200)
        .header("ETag", "\"2\"");
    ada.asks().header("If-Match", tag).body(machine("C")).put(path).then().statusCode(412);
  }

  @Test
  void aConditionThatNamesNoVersionChangesNothing() {
    Person ada = People.join();
    String path = machineOf(ada);
    for (String tag : List.of("*", "")) {
      ada.asks().header("If-Match", tag).body(machine("B")).put(path).then().statusCode(428);
    }
    for (String tag : List.of("1", "\"x1\"", "\"\"")) {
      ada.asks().header("If-Match", tag).body(machine("B")).put(path).then().statusCode(412);
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {SEARCH, CONSENSUS})
  void aSearchIsAnsweredOnceForAsLongAsNothingChanges(String path) {
    String tag = given().get(path).then().statusCode(200).extract().header("ETag");
    assertTrue(tag.startsWith("W/\""), tag);
    given()
        .header("If-None-Match", tag)
        .get(path)
        .then()
        .statusCode(304)
        .header("ETag", equalTo(tag));
    given().header("If-None-Match", tag).get(path + "&q=oak").then().statusCode(200);

    Person ada = People.join();
    String own = ada.asks().get(path).header("ETag");
    assertNotEquals(tag, own, "somebody else asks");
    machineOf(ada);
    assertNotEquals(own, ada.asks().get(path).header("ETag"), "with another machine");

    Map<String, Object> report = new HashMap<>();
    report.put("laser", laser());
    report.put("material", "birch plywood");
    report.put("process", "surface-engraving");
    report.put("settings", Map.of("power", "50 %", "speed", "300 mm/s", "lineSpacing", "0.1 mm"));
    report.put("effect", "right");
    report.put("notes", UUID.randomUUID().toString());
    post(ada, "/api/v1/reports", report);
    given().header("If-None-Match", tag).get(path).then().statusCode(200);
  }

  private static Map<String, Object> laser() {
    Map<String, Object> laser = machine("x");
    laser.remove("name");
    return laser;
  }

  @ParameterizedTest
  @ValueSource(strings = {"/api/v1/materials", SEARCH, "/api/v1/openapi.json", "/about"})
  void whatIsTextIsPacked(String path) throws IOException {
    HttpURLConnection call = (HttpURLConnection) new URL(server, path).openConnection();
    call.setRequestProperty("Accept-Encoding", "gzip");
    call.getResponseCode();
    assertEquals("gzip", call.getHeaderField("Content-Encoding"));
    assertTrue(call.getHeaderField("Vary").contains("Accept-Encoding"));
    String tag = call.getHeaderField("ETag");
    assertTrue(tag == null || tag.startsWith("W/") || tag.endsWith("-gzip\""), tag);
    call.disconnect();
  }

  @Test
  void otherSitesReadWhatStrangersReadWhereTheClubReadsInPublic() {
    for (String path : List.of(SEARCH, "/api/v1/materials", "/api/v1/reports/changes")) {
      given()
          .header("Origin", "https://elsewhere.example")
          .get(path)
          .then()
          .statusCode(200)
          .header("Access-Control-Allow-Origin", equalTo("*"))
          .header("Access-Control-Allow-Credentials", nullValue())
          .header("Access-Control-Expose-Headers", containsString("ETag"))
          .header("Cross-Origin-Resource-Policy", equalTo("cross-origin"));
    }
    preflight("GET", "if-none-match")
        .then()
        .statusCode(204)
        .header("Access-Control-Allow-Origin", equalTo("*"))
        .header("Access-Control-Allow-Methods", equalTo("GET, HEAD"))
        .header("Access-Control-Allow-Headers", containsString("If-None-Match"))
        .header("Access-Control-Allow-Headers", not(containsString("Authorization")));
    given()
        .get("/api/v1/reports/" + UUID.randomUUID())
        .then()
        .statusCode(404)
        .header("Access-Control-Allow-Origin", equalTo("*"));
  }

  @Test
  void otherSitesNeitherWriteNorReadPages() {
    given()
        .header("Origin", "https://elsewhere.example")
        .get("/about")
        .then()
        .header("Access-Control-Allow-Origin", nullValue())
        .header("Cross-Origin-Resource-Policy", equalTo("same-origin"));
    People.join()
        .asks()
        .header("Origin", "https://elsewhere.example")
        .body(Map.of())
        .post("/api/v1/reports")
        .then()
        .header("Access-Control-Allow-Origin", nullValue());
  }

  @Test
  void otherSitesReadNothingOfAClubForMembers() {
    club.readingPublic(false);
    Person ada = People.join();
    ada.asks()
        .header("Origin", "https://elsewhere.example")
        .get(SEARCH)
        .then()
        .statusCode(200)
        .header("Access-Control-Allow-Origin", nullValue())
        .header("Cross-Origin-Resource-Policy", equalTo("same-origin"));
    preflight("GET", "authorization").then().header("Access-Control-Allow-Origin", nullValue());
  }

  private static Response preflight(String method, String headers) {
    return given()
        .header("Origin", "https://elsewhere.example")
        .header("Access-Control-Request-Method", method)
        .header("Access-Control-Request-Headers", headers)
        .options(SEARCH);
  }
}
