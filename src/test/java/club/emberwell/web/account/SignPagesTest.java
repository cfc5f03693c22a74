package club.emberwell.web.account;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.web.frame.Browser;
import club.emberwell.web.frame.LocalPath;
import io.quarkus.test.junit.QuarkusTest;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

@QuarkusTest
class SignPagesTest {
  private static final String FORM = "main form";

  @ParameterizedTest
  @ValueSource(strings = {"/sign-in", "/sign-up"})
  void howPeopleComeInAndWhatTheyDoHereStandBesideTheForm(String path) {
    String beside = new Browser().get(path).tidy().page().select("main .beside > aside").text();
    assertTrue(beside.contains("Anybody can join this club. Members post"), beside);
  }

  @Test
  void joiningLeadsToTheBenchAndSignsIn() {
    String handle = People.freshHandle();
    Browser browser = new Browser().get("/sign-up").tidy();
    browser.send(FORM, Map.of("handle", handle, "password", "quiet heron walks"));
    assertEquals(303, browser.status());
    browser.follow().tidy();
    assertTrue(browser.page().select("nav.account").text().contains(handle));
  }

  @ParameterizedTest
  @CsvSource({
    "handle, ab",
    "handle, has space",
    "password, short",
    "password, password1",
    "email, not-an-address",
  })
  void aFieldAtFaultIsToldBesideItAndTheRestStays(String field, String value) {
    Map<String, String> fields =
        new java.util.HashMap<>(
            Map.of(
                "handle", People.freshHandle(),
                "email", "",
                "password", "quiet heron walks"));
    fields.put(field, value);
    Browser browser = new Browser().get("/sign-up").send(FORM, fields);
    assertEquals(422, browser.status());
    browser.tidy();
    assertFalse(browser.page().select("#at-" + field + " .field-error").isEmpty());
    assertEquals(fields.get("handle"), browser.field("handle"));
    assertEquals("", browser.field("password"), "a password never comes back");
  }

  @Test
  void aWrongPasswordSaysNoMoreThanAnUnknownName() {
    Person person = People.join();
    String wrong = refusal(person.handle());
    assertEquals(wrong, refusal(People.freshHandle()));
  }

  private static String refusal(String handle) {
    Browser browser =
        new Browser()
            .get("/sign-in")
            .send(FORM, Map.of("handle", handle, "password", "not this one at all"));
    assertEquals(401, browser.status());
    return browser.page().select("#error-summary").text();
  }

  /** OWASP ASVS 5.0.0, V7.2.4. */
  @Test
  void signingInAgainMakesANewSessionAndEndsTheOneBefore() {
    Person person = People.join();
    Browser browser = Browser.of(person);
    String before = browser.cookie("emberwell");
    browser.get("/sign-in");
    browser.send("main form", Map.of("handle", person.handle(), "password", People.PASSWORD));
    assertEquals(303, browser.status());
    assertNotEquals(before, browser.cookie("emberwell"));
    assertEquals(200, browser.get("/me").status());
    given().cookie("emberwell", before).get("/me").then().statusCode(401);
  }

  @Test
  void signingInLeadsBackToWhereOneWantedToGo() {
    Person person = People.join();
    Browser browser = new Browser().get("/post");
    assertEquals(401, browser.status());
    browser.tidy().send(FORM, Map.of("handle", person.handle(), "password", People.PASSWORD));
    assertEquals(303, browser.status());
    assertEquals("/post", browser.location());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "//elsewhere.example/x",
        "https://elsewhere.example",
        "/\\elsewhere.example",
        "javascript:1",
        "/a b",
        "/\r\nSet-Cookie: x=1",
      })
  void noSignInLeadsToAnotherSite(String wanted) {
    assertEquals("/", LocalPath.of(wanted, "/").toString());
  }

  @Test
  void preferencesShowEverywhereAndTokensAreShownOnce() {
    Person person = People.join();
    Browser browser = Browser.of(person).get("/me").tidy();
    browser.send(
        "form[action=/me/preferences]", Map.of("numberStyle", "comma", "units.SPEED", "[in_i]/s"));
    assertEquals(303, browser.status());
    browser.follow();
    assertEquals("[in_i]/s", browser.field("units.SPEED"));
    assertEquals("comma", browser.field("numberStyle"));

    browser.send("form[action=/me/tokens]", Map.of("label", "a script", "scopes", "read"));
    assertEquals(200, browser.status());
    String token = browser.page().select(".box-good code").text();
    assertTrue(token.startsWith("ew_"));
    given().auth().oauth2(token).get("/api/v1/me").then().statusCode(200);
    given().auth().oauth2(token).delete("/api/v1/me/sessions").then().statusCode(403);
    browser.get("/me");
    assertTrue(browser.page().select(".box-good code").isEmpty());
    assertNotNull(
        browser.page().selectFirst("li:contains(a script):contains(may read what you can read)"));
    browser.send("form[action=/me/tokens]", Map.of("label", "another", "scopes", "all"));
    assertEquals(422, browser.status());
  }

  /**
   * The draft “Clear Site Data” of the W3C, 3.1; storage stays: unsent forms of others are in it.
   */
  @Test
  void aSignOutEmptiesTheCacheOfTheBrowser() {
    Browser browser = Browser.of(People.join()).get("/me");
    browser.send("form[action=/sign-out]", Map.of());
    assertEquals("\"cache\"", browser.header("Clear-Site-Data"));
  }

  @Test
  void aMemberChoosesALicenceAndIsToldAtTheFieldWhatThereIs() {
    Browser browser = Browser.of(People.join()).get("/me");
    browser.send("form[action=/me/sharing]", Map.of("licence", "CC0-1.0", "named", "false"));
    assertEquals(303, browser.status());
    browser.follow();
    assertEquals("CC0-1.0", browser.field("licence"));
    assertEquals("false", browser.field("named"));
    assertEquals("any", browser.field("numberStyle"));
    browser.send("form[action=/me/sharing]", Map.of("licence", "MIT"));
    assertEquals(422, browser.status());
    assertTrue(browser.page().select(".field-error").text().contains("CC-BY-SA-4.0"));
    browser.get("/me");
    assertEquals("CC0-1.0", browser.field("licence"));
  }
}
