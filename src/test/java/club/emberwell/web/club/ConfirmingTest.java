package club.emberwell.web.club;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.endsWith;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.api.member.Staff;
import club.emberwell.member.Members;
import club.emberwell.member.Role;
import club.emberwell.member.club.ClubOptions;
import club.emberwell.web.frame.Browser;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * What is grave needs more than a token and more than a session that was begun some time ago (OWASP
 * ASVS 5.0, V7.5; RFC 9470 for programs).
 */
@QuarkusTest
class ConfirmingTest {
  private static final String ROLES = "/api/v1/roles";
  private static final String LINKS = "/api/v1/password-resets/links";
  private static final String CLUB = "/api/v1/club";

  @Inject Staff staff;
  @Inject Members members;
  @Inject ClubOptions club;
  @Inject EntityManager db;

  private Person owner;
  private Person other;

  @BeforeEach
  void people() {
    owner = staff.person(Role.OWNER);
    other = staff.person(Role.MEMBER);
  }

  @AfterEach
  void open() {
    club.door(ClubOptions.Door.OPEN);
    club.readingPublic(true);
  }

  private Role role(Person of) {
    return members.byId(UUID.fromString(of.id())).orElseThrow().role();
  }

  /** The same request without a password, with a wrong one, and with the right one. */
  private static ValidatableResponse needsThePassword(
      Person by, Map<String, ?> body, String method, String path) {
    Map<String, Object> sent = new HashMap<>(body);
    send(by, sent, method, path)
        .statusCode(401)
        .contentType("application/problem+json")
        .body("type", endsWith("/problems/confirmation-required"))
        .header("WWW-Authenticate", containsString("error=\"insufficient_user_authentication\""));
    sent.put("password", "not this one at all");
    send(by, sent, method, path).statusCode(422).body("errors.pointer", hasItem("/password"));
    sent.put("password", People.PASSWORD);
    return send(by, sent, method, path);
  }

  private static ValidatableResponse send(
      Person by, Map<String, ?> body, String method, String path) {
    var request = by.asks().body(body);
    return (method.equals("PUT")
            ? request.header("If-Match", given().get(path).header("ETag")).put(path)
            : request.post(path))
        .then();
  }

  @Test
  void aTokenAloneMakesAndUnmakesNoOwner() {
    Map<String, Object> up = Map.of("handle", other.handle(), "role", "owner", "reason", "x");
    send(owner, up, "POST", ROLES).statusCode(401);
    assertEquals(Role.MEMBER, role(other));
    needsThePassword(owner, up, "POST", ROLES).statusCode(200).body("role", equalTo("owner"));
    Map<String, Object> down = Map.of("handle", other.handle(), "role", "member", "reason", "x");
    needsThePassword(owner, down, "POST", ROLES).statusCode(200);
    Map<String, Object> less = Map.of("handle", other.handle(), "role", "moderator", "reason", "x");
    send(owner, less, "POST", ROLES).statusCode(200);
  }

  @Test
  void aTokenAloneMakesNoLinkForAnotherPassword() {
    needsThePassword(owner, Map.of("handle", other.handle()), "POST", LINKS)
        .statusCode(201)
        .body("url", containsString("/reset/"));
  }

  @Test
  void aTokenAloneChangesNeitherDoorNorReadingNorSignIn() {
    Map<String, Object> draft = new HashMap<>();
    draft.put("name", "The Alder Shed");
    draft.put("door", "open");
    draft.put("reading", "public");
    draft.put("localSignIn", true);
    draft.put("licence", "CC0 for numbers.");
    draft.put("notes", "What else owners say needs no password.");
    send(owner, draft, "PUT", CLUB).statusCode(200);
    draft.put("door", "request");
    needsThePassword(owner, draft, "PUT", CLUB).statusCode(200).body("door", equalTo("request"));
    draft.put("reading", "members");
    send(owner, draft, "PUT", CLUB).statusCode(401);
    given().get(CLUB).then().body("reading", equalTo("public"));
  }

  private Browser longAgo() {
    Browser browser = Browser.of(owner);
    QuarkusTransaction.requiringNew()
        .run(
            () ->
                db.createNativeQuery(
                        "update session set confirmed_at = now() - interval '11 minutes'"
                            + " where member_id = cast(?1 as uuid)")
                    .setParameter(1, owner.id())
                    .executeUpdate());
    return browser;
  }

  @Test
  void aPageAsksForThePasswordKeepsWhatWasTypedAndThenDoesIt() {
    Browser browser = longAgo().get("/desk/club/people");
    browser.send(
        "main form",
        Map.of("handle", other.handle(), "role", "owner", "reason", "shares the work"));
    assertEquals(403, browser.status());
    assertEquals("shares the work", browser.tidy().field("reason"));
    assertEquals(other.handle(), browser.field("handle"));
    assertTrue(browser.page().text().contains("Please confirm that it is you"));
    assertEquals(Role.MEMBER, role(other));
    browser.send("main form", Map.of("confirm_", "not this one at all"));
    assertEquals(401, browser.status());
    assertEquals("shares the work", browser.tidy().field("reason"));
    browser.send("main form", Map.of("confirm_", People.PASSWORD));
    assertEquals(303, browser.status());
    assertEquals(Role.OWNER, role(other));
    // for some minutes this browser is not asked again
    browser.follow().send("main form[action$=link]", Map.of("for", other.handle()));
    assertEquals(200, browser.status());
  }

  /** OWASP ASVS 5.0, V7.5.1: a token signs in as well as a password does. */
  @Test
  void makingATokenAndSigningOthersOutAskOnPagesToo() {
    Browser browser = longAgo().get("/me");
    browser.send("main form[action$=tokens]", Map.of("label", "Nightly copy"));
    assertEquals(403, browser.status());
    assertEquals("Nightly copy", browser.tidy().field("label"));
    browser.send(
        "main form[action$=tokens]", Map.of("label", "Nightly copy", "confirm_", People.PASSWORD));
    assertEquals(200, browser.status());
    assertTrue(browser.page().select(".box-good code").text().startsWith("ew_"));
    Browser again = longAgo().get("/desk/club/sign-out");
    again.send("main form", Map.of("who", "everybody", "reason", "A leak."));
    assertEquals(403, again.status());
    assertEquals("A leak.", again.tidy().field("reason"));
  }

  @Test
  void linksDoorAndSecretsAskOnPagesToo() {
    Browser browser = longAgo().get("/desk/club/people");
    browser.send("main form[action$=link]", Map.of("for", other.handle()));
    assertEquals(403, browser.status());
    assertTrue(browser.tidy().page().select(".box-good code").isEmpty());
    browser.get("/desk/club").send("main form", Map.of("door", "invitation", "name", "The Yard"));
    assertEquals(403, browser.status());
    assertEquals("The Yard", browser.tidy().field("name"));
    assertEquals(ClubOptions.Door.OPEN, club.door());
    browser.send("main form", Map.of("confirm_", People.PASSWORD));
    assertEquals(303, browser.status());
    assertEquals(ClubOptions.Door.INVITATION, club.door());
  }
}
