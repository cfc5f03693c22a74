package club.emberwell.access;

import static club.emberwell.access.People.PASSWORD;
import static club.emberwell.access.People.json;
import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.startsWith;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People.Person;
import club.emberwell.member.club.ClubOptions;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

@QuarkusTest
class AccountApiTest {
  private static final String PROBLEM = "application/problem+json";

  @Inject ClubOptions club;

  @Test
  void aStrangerJoinsGetsATokenAndReadsTheirAccount() {
    Person person = People.join();
    person
        .asks()
        .get("/api/v1/me")
        .then()
        .statusCode(200)
        .header("ETag", startsWith("\"0-"))
        .body("handle", equalTo(person.handle()))
        .body("role", equalTo("member"))
        .body("preferences.numberStyle", equalTo("any"));
    given()
        .get("/api/v1/members/" + person.id())
        .then()
        .statusCode(200)
        .body("handle", equalTo(person.handle()))
        .body("email", equalTo(null));
  }

  @Test
  void aTokenIs256BitsBehindAPrefixAndEndsWhenItsOwnerSaysSo() {
    Person person = People.join();
    given().header("Authorization", "Bearer " + person.token()).get("/api/v1/me");
    assertTrue(person.token().matches("ew_[A-Za-z0-9_-]{43}"));
    person.asks().get("/api/v1/tokens").then().body("items", hasSize(1));
    person.asks().get("/api/v1/tokens/" + person.tokenId()).then().body("label", equalTo("test"));
    People.join().asks().delete("/api/v1/tokens/" + person.tokenId()).then().statusCode(404);
    person.asks().delete("/api/v1/tokens/" + person.tokenId()).then().statusCode(204);
    person
        .asks()
        .get("/api/v1/me")
        .then()
        .statusCode(401)
        .contentType(PROBLEM)
        .header("WWW-Authenticate", containsString("invalid_token"));
    // a dead token is not quietly a stranger
    person.asks().get("/api/v1/members/" + person.id()).then().statusCode(401);
  }

  @ParameterizedTest
  @ValueSource(strings = {"Bearer ew_x", "Bearer", "Basic YTpi", "Bearer  ", "nonsense"})
  void aCredentialThatIsWorthNothingIsRefusedEvenWhereAnybodyMayRead(String header) {
    given()
        .header("Authorization", header)
        .get("/api/v1/members/" + People.join().id())
        .then()
        .statusCode(401)
        .contentType(PROBLEM);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "ab|a good long passphrase|/handle",
        "name with spaces|a good long passphrase|/handle",
        "-dash-first|a good long passphrase|/handle",
        "this-name-is-much-longer-than-it-may-be|a good long passphrase|/handle",
        "wörter|a good long passphrase|/handle",
        "<script>|a good long passphrase|/handle",
        "fine-name|short|/password",
        "fine-name|password123|/password",
        "fine-name|Emberwell2026!|/password",
        "fine-name|fine-name-12|/password",
        "fine-name|aaaaaaaaaaaa|/password",
      })
  void whatDoesNotFitIsRefusedAtItsField(String handle, String password, String pointer) {
    json(Map.of("handle", handle, "password", password))
        .post("/api/v1/members")
        .then()
        .statusCode(422)
        .contentType(PROBLEM)
        .body("status", equalTo(422))
        .body("errors.pointer", hasItem(pointer));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"no-at-sign", "two@@signs.example", "a@b", "sp ace@x.example", "@x.example"})
  void aMailAddressThatCannotBeOneIsRefused(String email) {
    json(Map.of("handle", People.freshHandle(), "password", PASSWORD, "email", email))
        .post("/api/v1/members")
        .then()
        .statusCode(422)
        .body("errors.pointer", equalTo(List.of("/email")));
  }

  @Test
  void aNameIsTakenOnceWhateverTheCaseOfItsLetters() {
    Person person = People.join();
    json(Map.of("handle", person.handle().toUpperCase(Locale.ROOT), "password", PASSWORD))
        .post("/api/v1/members")
        .then()
        .statusCode(422)
        .body("errors.pointer", hasItem("/handle"));
  }

  @Test
  void aWrongPasswordIs401WithoutSayingWhichPartIsWrong() {
    Person person = People.join();
    String known = wrong(person.handle());
    String unknown = wrong("nobody-" + person.handle());
    assertEquals(known, unknown);
  }

  private static String wrong(String handle) {
    return json(Map.of("handle", handle, "password", "not the password", "label", "x"))
        .post("/api/v1/tokens")
        .then()
        .statusCode(401)
        .contentType(PROBLEM)
        .extract()
        .asString();
  }

  @Test
  void preferencesNeedTheVersionThatWasRead() {
    Person person = People.join();
    Map<String, Object> wish =
        Map.of("numberStyle", "comma", "units", Map.of("speed", "mm/min", "lineSpacing", "mm"));
    person.asks().body(wish).put("/api/v1/me/preferences").then().statusCode(428);
    person
        .asks()
        .header("If-Match", "\"7\"")
        .body(wish)
        .put("/api/v1/me/preferences")
        .then()
        .statusCode(412);
    person
        .asks()
        .header("If-Match", "\"0\"")
        .body(wish)
        .put("/api/v1/me/preferences")
        .then()
        .statusCode(200)
        .header("ETag", "\"1\"")
        .body("preferences.units.speed", equalTo("mm/min"))
        .body("preferences.numberStyle", equalTo("comma"));
  }

  @Test
  void preferencesNobodyOffersAreRefusedAtTheirPointer() {
    Person person = People.join();
    person
        .asks()
        .header("If-Match", "\"0\"")
        .body(Map.of("numberStyle", "roman", "units", Map.of("speed", "furlong", "no/such", "mm")))
        .put("/api/v1/me/preferences")
        .then()
        .statusCode(422)
        .body("errors.pointer", hasItem("/numberStyle"))
        .body("errors.pointer", hasItem("/units/speed"))
        .body("errors.pointer", hasItem("/units/no~1such"));
  }

  @Test
  void theOldPasswordIsNeededForANewOneAndNoLongerWorksThen() {
    Person person = People.join();
    person
        .asks()
        .body(Map.of("current", "guess what it was", "password", "another fine phrase"))
        .post("/api/v1/me/password")
        .then()
        .statusCode(422)
        .body("errors.pointer", hasItem("/current"));
    person
        .asks()
        .body(Map.of("current", PASSWORD, "password", "another fine phrase"))
        .post("/api/v1/me/password")
        .then()
        .statusCode(204);
    wrongNow(person, PASSWORD, 401);
    wrongNow(person, "another fine phrase", 201);
  }

  private static void wrongNow(Person person, String password, int status) {
    json(Map.of("handle", person.handle(), "password", password, "label", "x"))
        .post("/api/v1/tokens")
        .then()
        .statusCode(status);
  }

  @Test
  void passwordsThatDifferOnlyBehindTheirSeventySecondByteAreDifferent() {
    String head = "moss and copper ".repeat(5);
    String handle = People.freshHandle();
    json(Map.of("handle", handle, "password", head + "one")).post("/api/v1/members");
    Person person = new Person(handle, "", "", "");
    wrongNow(person, head + "two", 401);
    wrongNow(person, head + "one", 201);
  }

  @Test
  void aClosedDoorAnswers403AndMembersOnlyReadingAnswers401() {
    String id = People.join().id();
    club.door(ClubOptions.Door.INVITATION);
    club.readingPublic(false);
    try {
      json(Map.of("handle", People.freshHandle(), "password", PASSWORD))
          .post("/api/v1/members")
          .then()
          .statusCode(403)
          .contentType(PROBLEM);
      given().get("/api/v1/members/" + id).then().statusCode(401);
    } finally {
      club.door(ClubOptions.Door.OPEN);
      club.readingPublic(true);
    }
    given().get("/api/v1/members/" + id).then().statusCode(200);
  }

  @Test
  void everyAnswerCarriesTheGuards() {
    for (String path : new String[] {"/api/v1/me", "/about", "/no-such-page", "/q/health/live"}) {
      given()
          .get(path)
          .then()
          .header("Content-Security-Policy", startsWith("default-src 'none'; script-src 'self'"))
          .header("X-Content-Type-Options", "nosniff")
          .header("Referrer-Policy", "same-origin")
          .header("Permissions-Policy", notNullValue())
          .header("Cross-Origin-Opener-Policy", "same-origin")
          // what a club reads in public other sites may read too
          .header(
              "Cross-Origin-Resource-Policy",
              path.startsWith("/api/") ? "cross-origin" : "same-origin");
    }
  }
}
