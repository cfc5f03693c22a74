package club.emberwell.access;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People.Person;
import club.emberwell.member.Actor;
import club.emberwell.member.Members;
import club.emberwell.member.Role;
import club.emberwell.member.account.Accounts;
import club.emberwell.member.session.Sessions;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.http.Cookie;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@QuarkusTest
class PageAccessTest {
  @Inject Accounts accounts;
  @Inject Members members;
  @Inject Sessions sessions;

  /** What a browser holds after loading a page with a form. */
  private record Form(String cookie, String token) {
    static Form load() {
      Response page = given().get("/test-only/form");
      return new Form(page.getCookie("emberwell-form"), page.asString());
    }

    RequestSpecification filled() {
      return given().cookie("emberwell-form", cookie).formParam("form-token", token);
    }
  }

  private static Cookie signIn(Person person) {
    return Form.load()
        .filled()
        .formParam("handle", person.handle())
        .formParam("password", People.PASSWORD)
        .post("/test-only/sign-in")
        .then()
        .statusCode(200)
        .extract()
        .detailedCookie("emberwell");
  }

  private static int who(Cookie cookie) {
    return given().cookie(cookie.getName(), cookie.getValue()).get("/test-only/who").statusCode();
  }

  @Test
  void theSessionCookieIsForThisHostOnlyAndHiddenFromScripts() {
    Cookie cookie = signIn(People.join());
    assertTrue(cookie.isHttpOnly());
    assertEquals("Lax", cookie.getSameSite());
    assertEquals("/", cookie.getPath());
    assertEquals(null, cookie.getDomain());
    assertFalse(cookie.isSecured(), "plain HTTP on the own machine");
    assertEquals(43, cookie.getValue().length());
    assertEquals(200, who(cookie));
  }

  @Test
  void aReplayedCookieIsWorthNothingAfterSignOutPasswordChangeOrBan() {
    Person person = People.join();
    Cookie signedOut = signIn(person);
    sessions.end(signedOut.getValue());
    assertEquals(401, who(signedOut));

    Cookie beforeChange = signIn(person);
    person
        .asks()
        .body(Map.of("current", People.PASSWORD, "password", "another fine phrase"))
        .post("/api/v1/me/password")
        .then()
        .statusCode(204);
    assertEquals(401, who(beforeChange));

    Person other = People.join();
    Cookie beforeBan = signIn(other);
    Actor moderator = members.byId(UUID.fromString(person.id())).orElseThrow().actor();
    accounts.ban(moderator, UUID.fromString(other.id()), "test");
    assertEquals(401, who(beforeBan));
    other.asks().get("/api/v1/me").then().statusCode(401);
  }

  @Test
  void aMemberEndsOneSessionOrAllFromTheList() {
    Person person = People.join();
    Cookie one = signIn(person);
    Cookie two = signIn(person);
    String id = sessions.find(two.getValue()).orElseThrow().credential().toString();
    People.join().asks().delete("/api/v1/me/sessions/" + id).then().statusCode(404);
    person.asks().delete("/api/v1/me/sessions/" + id).then().statusCode(204);
    assertEquals(401, who(two));
    assertEquals(200, who(one));
    person.asks().delete("/api/v1/me/sessions").then().statusCode(204);
    assertEquals(401, who(one));
  }

  @Test
  void theApiTakesNoCookieAndAPageNoToken() {
    Person person = People.join();
    Cookie cookie = signIn(person);
    given().cookie("emberwell", cookie.getValue()).get("/api/v1/me").then().statusCode(401);
    // another spelling of the path is the same path
    given()
        .urlEncodingEnabled(false)
        .cookie("emberwell", cookie.getValue())
        .get("/%61pi/v1/me")
        .then()
        .statusCode(not(equalTo(200)));
    person.asks().get("/test-only/who").then().statusCode(401);
  }

  @Test
  void aRoleThatIsGivenReachesTheSessionAtOnceAndIncludesThoseBelow() {
    assertEquals(
        java.util.Set.of("reader", "member", "moderator"), CredentialProvider.upTo(Role.MODERATOR));
  }

  @Test
  void whatNamesNoRoleIsClosed() {
    given().get("/test-only/unannotated").then().statusCode(401);
  }

  @Test
  void aFormOfOursGoesThrough() {
    Form form = Form.load();
    form.filled().post("/test-only/form").then().statusCode(200);
    form.filled()
        .header("Sec-Fetch-Site", "same-origin")
        .post("/test-only/form")
        .then()
        .statusCode(200);
    form.filled()
        .multiPart("form-token", form.token())
        .post("/test-only/form")
        .then()
        .statusCode(200);
    given()
        .cookie("emberwell-form", form.cookie())
        .header("X-Form-Token", form.token())
        .post("/test-only/form")
        .then()
        .statusCode(200);
  }

  @Test
  void aFormWithoutItsTokenOrCookieOrWithAnotherBrowsersIsRefused() {
    Form form = Form.load();
    Form other = Form.load();
    given().post("/test-only/form").then().statusCode(403);
    given().formParam("a", "b").post("/test-only/form").then().statusCode(403);
    given().formParam("form-token", form.token()).post("/test-only/form").then().statusCode(403);
    given()
        .cookie("emberwell-form", other.cookie())
        .formParam("form-token", form.token())
        .post("/test-only/form")
        .then()
        .statusCode(403);
    given()
        .cookie("emberwell-form", form.cookie())
        .formParam("form-token", form.token() + "x")
        .post("/test-only/form")
        .then()
        .statusCode(403);
  }

  @ParameterizedTest
  @ValueSource(strings = {"text/plain", "application/json", "application/xml"})
  void aBodyThatIsNoFormCannotPassForOne(String type) {
    Form form = Form.load();
    given()
        .cookie("emberwell-form", form.cookie())
        .contentType(type)
        .body("form-token=" + form.token())
        .post("/test-only/form")
        .then()
        .statusCode(403);
  }

  @ParameterizedTest
  @ValueSource(strings = {"cross-site", "same-site", "none"})
  void aFormSentFromElsewhereIsRefusedEvenWithAToken(String site) {
    Form.load()
        .filled()
        .header("Sec-Fetch-Site", site)
        .post("/test-only/form")
        .then()
        .statusCode(403);
  }

  @ParameterizedTest
  @ValueSource(strings = {"https://elsewhere.example", "null", "http://localhost:1"})
  void aForeignOriginIsRefusedEvenWithAToken(String origin) {
    Form.load().filled().header("Origin", origin).post("/test-only/form").then().statusCode(403);
  }

  @Test
  void tokensOfOneBrowserDifferAndAllFit() {
    Form first = Form.load();
    Response again = given().cookie("emberwell-form", first.cookie()).get("/test-only/form");
    assertNotEquals(first.token(), again.asString());
    assertEquals(null, again.getCookie("emberwell-form"), "a known browser keeps its cookie");
    new Form(first.cookie(), again.asString())
        .filled()
        .post("/test-only/form")
        .then()
        .statusCode(200);
  }

  @Test
  void apiAnswersSetNoCookies() {
    People.join().asks().get("/api/v1/me").then().header("Set-Cookie", nullValue());
  }

  @Test
  void aFaultTellsANumberAndNothingElse() {
    given()
        .get("/api/test-only/fault")
        .then()
        .statusCode(500)
        .contentType("application/problem+json")
        .body("id.length()", equalTo(36))
        .body("detail", not(containsString("secret")))
        .body("detail", not(containsString("Exception")));
  }

  @Test
  void aDatabaseThatIsAwayIs503WithATimeToComeBack() {
    given()
        .get("/api/test-only/away")
        .then()
        .statusCode(503)
        .header("Retry-After", "3")
        .body("detail", not(containsString("select")));
  }

  @Test
  void aKeyedWriteIsDoneOnceAndItsKeyIsNeeded() {
    Person person = People.join();
    Map<String, String> body = Map.of("a", "1");
    person.asks().body(body).post("/api/test-only/writes").then().statusCode(400);
    person
        .asks()
        .header("Idempotency-Key", "x".repeat(500))
        .body(body)
        .post("/api/test-only/writes")
        .then()
        .statusCode(400);
    String key = UUID.randomUUID().toString();
    String first = write(person, "\"" + key + "\"", body, 201).asString();
    Response second = write(person, key, body, 201);
    assertEquals(first, second.asString());
    assertTrue(second.header("Location").endsWith("/api/test-only/writes/1"));
    write(person, key, Map.of("a", "2"), 422);
    assertNotEquals(first, write(People.join(), key, body, 201).asString());
  }

  private static Response write(Person person, String key, Map<String, String> body, int status) {
    return person
        .asks()
        .header("Idempotency-Key", key)
        .body(body)
        .post("/api/test-only/writes")
        .then()
        .statusCode(status)
        .extract()
        .response();
  }
}
