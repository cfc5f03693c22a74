package club.emberwell.web.account;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.api.member.Staff;
import club.emberwell.member.Role;
import club.emberwell.web.frame.Browser;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * A session gets another id where what it stands for changes (OWASP ASVS 5.0, V7.2.4 and V7.4.3).
 */
@QuarkusTest
class SessionIdsTest {
  private static final String COOKIE = "emberwell";
  private static final String FRESH = "ten grey herons left";

  @Inject Staff staff;

  private static int meets(String cookie) {
    return given().cookie(COOKIE, cookie).redirects().follow(false).get("/me").statusCode();
  }

  private static int meetsByToken(Person person) {
    return person.asks().get("/api/v1/me").statusCode();
  }

  private static Browser changed(Person person, String tokens) {
    Browser browser = Browser.of(person).get("/me").tidy();
    browser.send(
        "form[action=/me/password]",
        new HashMap<>(
            tokens == null
                ? Map.of("current_", People.PASSWORD, "password", FRESH)
                : Map.of("current_", People.PASSWORD, "password", FRESH, "programs", tokens)));
    assertEquals(303, browser.status());
    return browser;
  }

  @Test
  void aNewPasswordGivesThisBrowserAnotherSessionAndEndsTheRestWithAllTokens() {
    Person person = People.join();
    Browser elsewhere = Browser.of(person);
    Browser here = Browser.of(person).get("/me");
    String before = here.cookie(COOKIE);
    here.send("form[action=/me/password]", Map.of("current_", People.PASSWORD, "password", FRESH));
    assertEquals(303, here.status());
    assertNotEquals(before, here.cookie(COOKIE));
    assertEquals(401, meets(before));
    assertEquals(401, meets(elsewhere.cookie(COOKIE)));
    assertEquals(200, here.follow().tidy().status());
    assertEquals(401, meetsByToken(person));
  }

  @Test
  void tokensGoOnWhereTheirOwnerSaysSo() {
    Person person = People.join();
    changed(person, "keep");
    assertEquals(200, meetsByToken(person));
    Person other = People.join();
    changed(other, "end");
    assertEquals(401, meetsByToken(other));
  }

  @Test
  void theApiAsksAboutTokensToo() {
    Person ended = People.join();
    Person kept = People.join();
    ended.asks().body(Map.of("current", People.PASSWORD, "password", FRESH)).post(PATH);
    assertEquals(401, meetsByToken(ended));
    kept.asks()
        .body(Map.of("current", People.PASSWORD, "password", FRESH, "keepTokens", true))
        .post(PATH)
        .then()
        .statusCode(204);
    assertEquals(200, meetsByToken(kept));
  }

  private static final String PATH = "/api/v1/me/password";

  @Test
  void anotherRoleGivesEveryBrowserAnotherSecretWithItsNextPage() {
    Person person = staff.person(Role.MEMBER);
    Browser browser = Browser.of(person).get("/me");
    String before = browser.cookie(COOKIE);
    staff.role(person, Role.MODERATOR);
    assertEquals(200, browser.get("/desk").status());
    String after = browser.cookie(COOKIE);
    assertNotEquals(before, after);
    assertEquals(200, browser.get("/me").status());
    assertEquals(after, browser.cookie(COOKIE), "once, not with every page");
    assertEquals(1, browser.page().select("#sessions + ul li").size());
    // what was asked for at the same time is still answered
    assertEquals(200, meets(before));
  }

  @Test
  void aSignOutRightAfterAnotherRoleEndsBothSecrets() {
    Person person = staff.person(Role.MEMBER);
    Browser browser = Browser.of(person).get("/me");
    String before = browser.cookie(COOKIE);
    staff.role(person, Role.MODERATOR);
    browser.send("form[action=/sign-out]", Map.of());
    assertEquals(401, meets(before));
    Browser another = Browser.of(person).get("/me");
    assertEquals(1, another.page().select("#sessions + ul li").size());
    String first = another.cookie(COOKIE);
    staff.role(person, Role.MEMBER);
    String second = another.get("/me").cookie(COOKIE);
    assertNotEquals(first, second);
    another.send("form[action=/sign-out]", Map.of());
    assertEquals(401, meets(first));
    assertEquals(401, meets(second));
  }

  @Test
  void aTokenThatModeratedDoesNotModerateAgainAfterItsOwnerWasAMember() {
    Person person = staff.person(Role.MODERATOR);
    person.asks().get("/api/v1/requests").then().statusCode(200);
    staff.role(person, Role.MEMBER);
    assertFalse(scopes(person).contains("moderate"));
    staff.role(person, Role.MODERATOR);
    person.asks().get("/api/v1/requests").then().statusCode(403);
    assertTrue(scopes(People.again(person)).contains("moderate"));
  }

  private static List<String> scopes(Person person) {
    return person.asks().get("/api/v1/tokens/" + person.tokenId()).then().extract().path("scopes");
  }
}
