package club.emberwell.web.account;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.api.member.Staff;
import club.emberwell.member.Members;
import club.emberwell.member.Role;
import club.emberwell.member.Secrets;
import club.emberwell.member.club.ClubOptions;
import club.emberwell.member.club.ClubOptions.Door;
import club.emberwell.web.frame.Browser;
import com.nimbusds.jwt.JWTClaimsSet;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.TestResourceScope;
import io.quarkus.test.common.WithTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.Date;
import java.util.HexFormat;
import java.util.Map;
import java.util.UUID;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Signing in by a provider, which runs beside the test and checks its side of the protocol. */
@QuarkusTest
@WithTestResource(value = OwnProvider.class, scope = TestResourceScope.RESTRICTED_TO_CLASS)
class SsoTest {
  OwnProvider provider;

  @Inject ClubOptions club;
  @Inject Members members;
  @Inject Staff staff;
  @Inject EntityManager db;

  private String subject;
  private String name;

  @BeforeEach
  void somebodyNew() {
    club.door(Door.OPEN);
    subject = UUID.randomUUID().toString();
    name = People.freshHandle();
    provider.isUsedBy(subject, name, name + "@guild.example", true);
  }

  @AfterEach
  void localAgain() {
    club.localSignIn(true);
  }

  /** To the provider and back; answers the path and query the provider sent the browser to. */
  private static String trip(Browser browser, String path) {
    return away(browser.get(path));
  }

  private static String away(Browser browser) {
    assertEquals(303, browser.status());
    return OwnProvider.back(browser.header("Location"));
  }

  private Browser arrived() {
    Browser browser = new Browser();
    browser.get(trip(browser, "/sign-in/sso?to=/bench"));
    return browser;
  }

  /** Somebody who came by the provider and chose the suggested name. */
  private Browser joined() {
    Browser browser = arrived();
    assertEquals(303, browser.status());
    browser.follow().tidy();
    assertEquals(name, browser.field("handle"));
    browser.send("main form", Map.of());
    assertEquals(303, browser.status());
    return browser;
  }

  @Test
  void whoComesFirstChoosesANameAndIsKnownTheNextTime() {
    Browser browser = joined();
    assertEquals("/bench", browser.location());
    assertEquals(200, browser.get("/me").tidy().status());
    var member = members.byHandle(name).orElseThrow();
    assertEquals(name + "@guild.example", member.email());
    assertTrue(member.emailConfirmed());
    assertFalse(member.hasPassword());
    Browser again = arrived();
    assertEquals(303, again.status());
    assertEquals("/bench", again.location());
    assertEquals(200, again.get("/me").status());
  }

  @Test
  void anAddressTheProviderHasNotProvedIsNotTaken() {
    provider.isUsedBy(subject, name, name + "@guild.example", false);
    joined();
    assertEquals(null, members.byHandle(name).orElseThrow().email());
  }

  @Test
  void anAddressOrNameOfSomebodyHereTakesNoAccountOver() {
    Person local = staff.person(Role.MEMBER);
    String email = local.handle() + "@guild.example";
    local.asks().body(Map.of("email", email, "password", People.PASSWORD)).post("/api/v1/me/email");
    provider.isUsedBy(subject, local.handle(), email, true);
    Browser browser = arrived().follow();
    assertEquals("", browser.field("handle"));
    browser.send("main form", Map.of("handle", local.handle()));
    assertEquals(422, browser.status());
    browser.tidy().send("main form", Map.of("handle", name));
    assertEquals(303, browser.status());
    assertEquals(null, members.byHandle(name).orElseThrow().email());
  }

  @Test
  void theDoorHoldsForTheProvidersPeopleToo() {
    club.door(Door.INVITATION);
    Browser shut = arrived().follow();
    assertTrue(shut.tidy().page().text().contains("by invitation"));
    assertEquals(0, shut.page().select("main form").size());
    String code =
        staff
            .person(Role.MODERATOR)
            .asks()
            .body(Map.of("uses", 1))
            .post("/api/v1/invitations")
            .then()
            .statusCode(201)
            .extract()
            .path("code");
    Browser invited = new Browser().get("/invitation/" + code).tidy();
    String link = invited.page().selectFirst("a[href^=/sign-in/sso]").attr("href");
    invited.get(trip(invited, link)).follow();
    invited.send("main form", Map.of());
    assertEquals(303, invited.status());
    club.door(Door.REQUEST);
    subject = UUID.randomUUID().toString();
    name = People.freshHandle();
    provider.isUsedBy(subject, name, null, false);
    Browser asking = arrived().follow().tidy();
    asking.send("main form", Map.of());
    assertEquals(422, asking.status());
    asking.tidy().send("main form", Map.of("request", "I have a tube and a shed."));
    assertEquals(200, asking.status());
    asking.tidy();
    assertEquals(403, arrived().status());
  }

  static Stream<UnaryOperator<JWTClaimsSet.Builder>> lies() {
    return Stream.of(
        c -> c.claim("nonce", "another"),
        c -> c.claim("nonce", null),
        c -> c.audience("somebody-else"),
        c -> c.issuer("https://elsewhere.example"),
        c -> c.expirationTime(Date.from(Instant.now().minusSeconds(120))),
        c -> c.issueTime(Date.from(Instant.now().plusSeconds(600))),
        c -> c.subject(null));
  }

  @ParameterizedTest
  @MethodSource("lies")
  void aTokenThatIsWrongInOnePartLetsNobodyIn(UnaryOperator<JWTClaimsSet.Builder> lie) {
    joined();
    provider.twist(lie);
    Browser browser = arrived();
    assertEquals(401, browser.status());
    assertEquals(401, browser.tidy().get("/me").status());
  }

  @Test
  void aTokenSignedByAnotherKeyLetsNobodyIn() throws Exception {
    joined();
    provider.signByAStrangersKey();
    assertEquals(401, arrived().status());
  }

  @Test
  void anAnswerIsUsedOnceAndOnlyInTheBrowserThatAsked() {
    joined();
    Browser browser = new Browser();
    String back = trip(browser, "/sign-in/sso");
    assertEquals(401, new Browser().get(back).status());
    Browser other = new Browser();
    trip(other, "/sign-in/sso");
    assertEquals(401, other.get(back).status());
    String cookie = browser.cookie("emberwell-trip");
    assertEquals(303, browser.get(back).status());
    assertEquals(401, browser.get(back).status());
    // even with the cookie kept, the state is spent
    assertEquals(
        401,
        given()
            .cookie("emberwell-trip", cookie)
            .redirects()
            .follow(false)
            .urlEncodingEnabled(false)
            .get(back)
            .statusCode());
  }

  @Test
  void aChangedCookieAnotherIssuerAndARefusalAreTurnedAway() {
    joined();
    Browser browser = new Browser();
    String back = trip(browser, "/sign-in/sso");
    String cookie = browser.cookie("emberwell-trip");
    String changed = (cookie.charAt(5) == 'A' ? "B" : "A") + cookie.substring(1);
    assertEquals(401, given().cookie("emberwell-trip", changed).get(back).statusCode());
    assertEquals(
        401, browser.get(back.replaceFirst("iss=[^&]*", "iss=https://x.example")).status());
    Browser refused = new Browser();
    String state = trip(refused, "/sign-in/sso").replaceFirst(".*state=", "");
    assertEquals(
        401, refused.get("/sign-in/sso/back?error=access_denied&state=" + state).tidy().status());
  }

  @Test
  void nobodyIsSentToAnotherSiteAfterwards() {
    joined();
    Browser browser = new Browser();
    browser.get(trip(browser, "/sign-in/sso?to=https://elsewhere.example/x"));
    assertEquals("/", browser.location());
  }

  @Test
  void aMemberLinksTheAccountAtTheProviderWhileSignedIn() {
    Person local = staff.person(Role.MEMBER);
    Browser browser = Browser.of(local);
    browser.get(away(browser.led("same-origin", "/sign-in/sso?to=/me")));
    assertEquals("/me", browser.location());
    Browser elsewhere = arrived();
    assertEquals(303, elsewhere.status());
    assertTrue(elsewhere.get("/me").page().text().contains(local.handle()));
    Browser thief = Browser.of(staff.person(Role.MEMBER));
    thief.get(away(thief.led("same-origin", "/sign-in/sso?to=/me")));
    assertEquals(403, thief.status());
  }

  /** OWASP ASVS 5.0.0, V3.5.3 and V7.6.2; who leads here, says Fetch Metadata (W3C). */
  @ParameterizedTest
  @ValueSource(strings = {"cross-site", "same-site"})
  void anotherSiteCannotBeginASignInOrLinkAnAccount(String from) {
    Browser browser = Browser.of(staff.person(Role.MEMBER));
    browser.led(from, "/sign-in/sso?to=/reports?a=1%26b=2&invitation=a%26b").tidy();
    assertEquals(200, browser.status());
    String on = browser.page().selectFirst("main a.button").attr("href");
    assertEquals("/sign-in/sso?to=%2Freports%3Fa%3D1%26b%3D2&invitation=a%26b", on);
    // typed, or from an old browser: signs somebody in and links nothing
    browser.get(trip(browser, "/sign-in/sso?to=/me"));
    assertEquals("/sign-in/sso/name", browser.location());
    assertEquals("/sign-in/sso/name", arrived().location());
  }

  @Test
  void anInvitationOnTheWayIsKeptAsAHash() {
    String code = "code-" + UUID.randomUUID();
    Browser browser = new Browser();
    browser.get(trip(browser, "/sign-in/sso?to=/bench&invitation=" + code));
    assertEquals(303, browser.status());
    String stored =
        QuarkusTransaction.requiringNew()
            .call(
                () ->
                    String.valueOf(
                        db.createNativeQuery(
                                "select cast(to_jsonb(a) as text) from sso_arrival a"
                                    + " where subject = ?1")
                            .setParameter(1, subject)
                            .getSingleResult()));
    assertFalse(stored.contains(code), stored);
    String hash = HexFormat.of().formatHex(Secrets.sha256(code));
    assertTrue(stored.contains(hash), stored);
  }

  /** An owner without a password whose sign-in was some time ago. */
  private Browser longAgo() {
    Browser browser = joined();
    for (String sql :
        new String[] {
          "update member set role = 'owner' where handle = ?1",
          "update session set confirmed_at = now() - interval '11 minutes'"
              + " where member_id = (select id from member where handle = ?1)"
        }) {
      QuarkusTransaction.requiringNew()
          .run(() -> db.createNativeQuery(sql).setParameter(1, name).executeUpdate());
    }
    return browser;
  }

  private static Browser asksForTheDoor(Browser browser) {
    return browser
        .get("/desk/club")
        .send("main form", Map.of("door", "request", "name", "The Guild's club"));
  }

  @Test
  void whoHasNoPasswordConfirmsAtTheProviderAndSendsTheFormAgain() {
    Browser browser = longAgo();
    assertEquals(403, asksForTheDoor(browser).status());
    browser.tidy();
    assertEquals("The Guild's club", browser.field("name"));
    Element link = browser.page().selectFirst("main a[href=/sign-in/sso/confirm]");
    assertEquals("_blank", link.attr("target"));
    provider.twist(c -> c.claim("auth_time", Instant.now().getEpochSecond()));
    browser.get("/sign-in/sso/confirm");
    // OpenID Connect Core 1.0, 3.1.2.1
    assertTrue(browser.header("Location").contains("prompt=login"));
    assertTrue(browser.header("Location").contains("max_age=0"));
    browser.get(OwnProvider.back(browser.header("Location")));
    assertEquals("/me?done=confirmed", browser.location());
    assertTrue(browser.follow().tidy().page().text().contains("send it again"));
    assertEquals(303, asksForTheDoor(browser).status());
  }

  static Stream<UnaryOperator<JWTClaimsSet.Builder>> noConfirmation() {
    return Stream.of(
        c -> c,
        c -> c.claim("auth_time", Instant.now().minusSeconds(3600).getEpochSecond()),
        c -> c.claim("auth_time", Instant.now().getEpochSecond()).subject("somebody-else"));
  }

  @ParameterizedTest
  @MethodSource("noConfirmation")
  void anOldSignInOrAnotherPersonConfirmsNothing(UnaryOperator<JWTClaimsSet.Builder> how) {
    Browser browser = longAgo();
    provider.twist(how);
    browser.get(trip(browser, "/sign-in/sso/confirm"));
    assertEquals(401, browser.status());
    assertEquals(403, asksForTheDoor(browser).status());
  }

  @Test
  void aSessionOfLongAgoLinksNoOtherAccount() {
    Browser browser = longAgo();
    provider.isUsedBy("another-" + subject, name, null, false);
    browser.led("same-origin", "/sign-in/sso?to=/me");
    assertEquals(403, browser.tidy().status());
  }

  @Test
  void localSignInCanBeSwitchedOffOnceAnOwnerGetsInByTheProvider() {
    Person owner = staff.person(Role.OWNER);
    assertEquals(422, switchOff(owner));
    Browser browser = Browser.of(owner);
    browser.get(away(browser.led("same-origin", "/sign-in/sso?to=/me")));
    assertEquals(200, switchOff(owner));
    assertEquals("/sign-in/sso?to=%2Fbench", new Browser().get("/sign-in?to=/bench").location());
    Map<String, String> proof =
        Map.of("handle", owner.handle(), "password", People.PASSWORD, "label", "x");
    People.json(proof).post("/api/v1/tokens").then().statusCode(404);
    People.json(Map.of("handle", name, "password", People.PASSWORD))
        .post("/api/v1/members")
        .then()
        .statusCode(404);
    People.json(Map.of("email", "a@b.example"))
        .post("/api/v1/password-resets")
        .then()
        .statusCode(404);
    for (String path : new String[] {"/sign-up", "/reset", "/reset/" + "x".repeat(43)}) {
      assertEquals(404, new Browser().get(path).status(), path);
    }
    Browser provided = arrived();
    assertEquals(303, provided.status());
    assertEquals(200, provided.get("/me").tidy().status());
    // who has a password but was let in by the provider keeps the page of the club
    assertEquals(200, provided.get("/desk/club").tidy().status());
  }

  private static int switchOff(Person owner) {
    Map<String, Object> draft =
        Map.of(
            "name", "The Guild's club",
            "door", "open",
            "reading", "public",
            "localSignIn", false,
            "licence", "CC0 for numbers.",
            "notes", "",
            "password", People.PASSWORD);
    String version = given().get("/api/v1/club").header("ETag");
    return owner.asks().header("If-Match", version).body(draft).put("/api/v1/club").statusCode();
  }
}
