package club.emberwell.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.grid.PlannedGrids;
import club.emberwell.member.Members;
import club.emberwell.member.session.Sessions;
import com.microsoft.playwright.Dialog;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import jakarta.inject.Inject;
import java.net.URI;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicReference;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A phone in a workshop: the line is cut and mended, the session ends, the browser is closed. */
@QuarkusTest
@TestProfile(ClubProfile.class)
class BadConnectionTest extends BrowserTest {
  private static final Pattern WAITING = Pattern.compile(".*/waiting$");
  private static final String PRESS_SEND_NOW =
      "() => [...document.querySelectorAll('#waiting-list button')]"
          + ".find(b => b.textContent === 'Send now')?.click()";
  private static final Pattern REPORT = Pattern.compile(".*/reports/[0-9a-f-]{36}.*");

  private static final Page.WaitForConditionOptions PATIENT =
      new Page.WaitForConditionOptions().setTimeout(15_000);

  private static final Path PICTURE =
      Path.of("src/main/resources/META-INF/resources/assets/icons/192.png");

  @Inject PlannedGrids grids;
  @Inject Members members;
  @Inject Sessions sessions;

  private Line line;
  private Visit phone;
  private Person person;

  @BeforeEach
  void takeThePhone() throws Exception {
    line = Line.to(URI.create(base.toString()));
    person = People.join();
    machine(person);
    phone = chromium.phone(line.address());
    signIn(person);
  }

  @AfterEach
  void putItDown() throws Exception {
    phone.close();
    line.close();
  }

  private static void machine(Person person) {
    person
        .asks()
        .header("Idempotency-Key", "\"" + UUID.randomUUID() + "\"")
        .body(
            Map.of(
                "name",
                "Loft diode",
                "source",
                "diode",
                "wavelength",
                "455 nm",
                "ratedPower",
                "10 W",
                "motion",
                "gantry"))
        .post("/api/v1/machines")
        .then()
        .statusCode(201);
  }

  private void signIn(Person who) {
    phone.signIn(who.handle(), People.PASSWORD);
    awaitWorker();
  }

  /** Until the service worker answers for this phone, and has fetched ahead. */
  private void awaitWorker() {
    awaitTrue("() => navigator.serviceWorker.controller !== null", null);
    awaitPageKept("/bench");
  }

  /** Playwright waits for no promise of a condition. */
  private void awaitTrue(String script, String argument) {
    phone.page().waitForCondition(() -> (Boolean) phone.page().evaluate(script, argument), PATIENT);
  }

  private void awaitKept(String value) {
    awaitTrue("async v => (await Kept.all()).some(f => f.fields.some(p => p[1] === v))", value);
  }

  private void awaitPageKept(String path) {
    awaitTrue("async p => (await caches.match(p, {ignoreVary: true})) !== undefined", path);
  }

  private void openTheBrowser(Path folder) {
    phone.close();
    phone = chromium.phone(line.address(), folder);
  }

  private void fillIn(String speed) {
    phone.fill(
        Map.of(
            "material",
            "slate",
            "settings.power",
            "80 %",
            "settings.speed",
            speed,
            "settings.lineSpacing",
            "0.1 mm"));
    phone.choose("process", "surface-engraving").choose("effect", "right");
  }

  private Locator item(String state) {
    return phone.one("#waiting-list li[data-state='" + state + "']");
  }

  private int reports() {
    return given()
        .get(base + "api/v1/reports?member=" + person.handle())
        .then()
        .statusCode(200)
        .extract()
        .path("total");
  }

  private void assertSentOnce() {
    assertThat(item("sent")).hasCount(1);
    phone.press("#waiting-list a:has-text('See it')");
    assertThat(phone.page()).hasURL(REPORT);
    assertThat(phone.one("h1")).containsText("Slate");
    assertEquals(1, reports());
  }

  @Test
  void aDraftOutlivesTheClosedBrowserAndWaitsForTheConnection(@TempDir Path folder) {
    openTheBrowser(folder);
    signIn(person);
    phone.open("/post");
    line.cut();
    fillIn("50 mm/s");
    awaitKept("50 mm/s");
    openTheBrowser(folder);
    phone.open("/post");
    assertThat(phone.one("#offline-strip")).containsText("No connection. As of ");
    assertThat(phone.one(".kept-line")).containsText("Kept on this phone, not sent");
    assertEquals("50 mm/s", phone.value("settings.speed"));
    phone.send();
    assertThat(phone.page()).hasURL(WAITING);
    assertThat(item("waits")).containsText("slate");
    line.mend();
    // the page sends by itself when the connection is back, and may do so before a finger can
    phone.page().evaluate(PRESS_SEND_NOW);
    assertSentOnce();
    phone.open("/post");
    assertThat(phone.one(".kept-line")).hasCount(0);
  }

  @Test
  void aFormWhoseAnswerWasLostIsSentAgainAndIsOneReport() {
    phone.open("/post");
    fillIn("51 mm/s");
    line.loseTheAnswerToAForm();
    phone.send();
    assertThat(phone.page()).hasURL(WAITING);
    assertThat(item("waits")).hasCount(1);
    line.mend();
    // two tabs at once
    Page other = phone.page().context().newPage();
    other.navigate("/waiting");
    phone.open("/waiting");
    assertSentOnce();
    other.close();
  }

  @Test
  void anEndedSessionAsksForTheSignInAndThenSendsOnce() {
    phone.open("/post");
    fillIn("52 mm/s");
    // as when a moderator bans or a password changes: the browser still holds its cookie
    sessions.endAll(members.byHandle(person.handle()).orElseThrow().actor().memberId());
    phone.send();
    assertThat(phone.page()).hasURL(WAITING);
    assertThat(phone.one("#waiting-list")).containsText("Sign in as " + person.handle());
    assertThat(phone.one("#waiting-list")).not().containsText("slate");
    phone.press("#waiting-list a:has-text('Sign in')");
    phone.fill(Map.of("handle", person.handle(), "password", People.PASSWORD)).send();
    assertThat(phone.page()).hasURL(WAITING);
    assertSentOnce();
  }

  @Test
  void aPhotoGoesAfterItsReportAndWhatIsRefusedOpensInItsForm() {
    phone.open("/post");
    line.cut();
    fillIn("1,000 mm/min");
    phone.send();
    assertThat(item("waits")).hasCount(1);
    phone.one("#waiting-list input[type=file]").setInputFiles(PICTURE);
    assertThat(item("waits")).hasCount(2);
    line.mend();
    phone.open("/waiting");
    assertThat(item("refused")).containsText("Speed");
    assertThat(item("waits")).hasCount(1);
    phone.press("#waiting-list button:has-text('Open it in its form')");
    assertThat(phone.one(".kept-line")).isVisible();
    phone.fill(Map.of("settings.speed", "53 mm/s")).send();
    assertThat(phone.page()).hasURL(REPORT);
    phone.open("/waiting");
    assertThat(item("sent")).hasCount(1);
    phone.press("#waiting-list a:has-text('See it')");
    assertThat(phone.one(".album img")).hasCount(1);
    assertEquals(1, reports());
  }

  @Test
  void aGridIsJudgedInTheWorkshopWithoutAConnection() {
    String grid = "/grids/" + grids.plan(person, 3);
    phone.open("/grids");
    // the last that is fetched ahead
    awaitPageKept(grid + "/photo");
    line.cut();
    phone.open(grid + "/sheet");
    assertThat(phone.one("#offline-strip")).containsText("No connection. As of ");
    assertThat(phone.one("main svg").first()).isVisible();
    phone.open(grid + "/results");
    phone.press("button.cell");
    phone.one(".judge-bar button.primary").click();
    assertThat(phone.page()).hasURL(WAITING);
    assertThat(item("waits")).containsText("Results of ");
    phone.open(grid + "/photo");
    phone.one("#photo").setInputFiles(PICTURE);
    phone.press("form[enctype] button");
    assertThat(phone.page()).hasURL(WAITING);
    assertThat(item("waits")).hasCount(2);
    line.mend();
    phone.open("/waiting");
    assertThat(item("sent")).hasCount(2);
    assertEquals(1, reports());
    phone.open(grid + "/photo");
    assertThat(phone.one(".corner-stage img")).isVisible();
  }

  @Test
  void nobodyElseOnThisPhoneSeesWhatIsKept() {
    phone.open("/post");
    fillIn("54 mm/s");
    awaitKept("54 mm/s");
    phone.page().context().clearCookies();
    Person other = People.join();
    machine(other);
    signIn(other);
    phone.open("/post");
    assertThat(phone.one(".kept-line")).hasCount(0);
    assertEquals("", phone.value("settings.speed"));
    phone.open("/waiting");
    assertThat(phone.one("#nothing-waits")).isVisible();
    line.cut();
    phone.open("/bench");
    assertThat(phone.one(".account-name")).hasText(other.handle());
  }

  @Test
  void whatWasTakenAwayLeavesThePhoneWithTheNextLook() {
    String id = person.asks().get("/api/v1/machines").then().extract().path("items[0].id");
    String path = "/bench/machines/" + id;
    phone.open(path);
    awaitPageKept(path);
    String tag = person.asks().get("/api/v1/machines/" + id).header("ETag");
    person.asks().header("If-Match", tag).delete("/api/v1/machines/" + id).then().statusCode(204);
    phone.open(path);
    awaitTrue("async p => (await caches.match(p, {ignoreVary: true})) === undefined", path);
    line.cut();
    phone.open(path);
    assertThat(phone.one("h1")).hasText("No connection");
  }

  @Test
  void signingOutAsksWhileSomethingWaitsAndLeavesNothing() {
    phone.open("/post");
    fillIn("55 mm/s");
    AtomicReference<String> asked = new AtomicReference<>();
    phone
        .page()
        .onceDialog(
            dialog -> {
              asked.set(dialog.message());
              dialog.dismiss();
            });
    phone.open("/me").press("main form[action='/sign-out'] button");
    phone.page().waitForCondition(() -> asked.get() != null);
    assertEquals(
        "1 form on this phone is not sent yet. Signing out deletes what is kept here. Sign out?",
        asked.get());
    phone.page().onceDialog(Dialog::accept);
    phone.press("main form[action='/sign-out'] button");
    assertThat(phone.one(".account a[href='/sign-in']")).isVisible();
    line.cut();
    phone.open("/bench");
    assertThat(phone.one("h1")).hasText("No connection");
    assertThat(phone.one("#kept-pages li")).hasCount(0);
    assertEquals(0, phone.page().evaluate("async () => (await Kept.all()).length"));
  }

  @Test
  void lastSearchesAndTheOfflinePageOpenWithoutAConnection() {
    phone.open("/?q=navy+powder+coat&source=diode");
    assertThat(phone.one("#found section.answer").first()).isVisible();
    awaitPageKept("/?q=navy+powder+coat&source=diode");
    line.cut();
    phone.open("/?q=navy+powder+coat&source=diode");
    assertThat(phone.one("#offline-strip")).containsText("No connection. As of ");
    assertThat(phone.one("#found section.answer").first()).isVisible();
    phone.open("/ask");
    assertThat(phone.one("h1")).hasText("No connection");
    assertThat(phone.one("#kept-pages")).containsText("navy powder coat");
    assertFalse(
        phone.complaints().stream().anyMatch(each -> each.contains("Content Security")),
        List.copyOf(phone.complaints()).toString());
  }
}
