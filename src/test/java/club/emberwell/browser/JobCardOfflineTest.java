package club.emberwell.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.card.Shop;
import com.microsoft.playwright.Page;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import java.net.URI;
import java.net.URL;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;

/** A phone at a machine where there is no connection: recipes and cards open all the same. */
@QuarkusTest
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class JobCardOfflineTest {
  private static final Page.WaitForConditionOptions PATIENT =
      new Page.WaitForConditionOptions().setTimeout(15_000);

  private static final String FITS =
      "() => document.documentElement.scrollWidth <= window.innerWidth";

  @TestHTTPResource("/")
  URL base;

  private Chromium chromium;
  private Line line;
  private Visit phone;

  @BeforeAll
  void start() {
    chromium = Chromium.start(base);
  }

  @AfterAll
  void close() {
    chromium.close();
  }

  @BeforeEach
  void takeThePhone() throws Exception {
    line = Line.to(URI.create(base.toString()));
    phone = chromium.phone(line.address());
  }

  @AfterEach
  void putItDown() throws Exception {
    phone.close();
    line.close();
  }

  private void awaitTrue(String script, String argument) {
    phone.page().waitForCondition(() -> (Boolean) phone.page().evaluate(script, argument), PATIENT);
  }

  private void awaitKept(String path) {
    awaitTrue("async p => (await caches.match(p, {ignoreVary: true})) !== undefined", path);
  }

  private void opensWithoutALine(String path, String says) {
    phone.open(path);
    assertThat(phone.one("#offline-strip")).containsText("No connection. As of ");
    assertThat(phone.one("main")).containsText(says);
    assertTrue((Boolean) phone.page().evaluate(FITS), path);
  }

  @Test
  void oneOwnsRecipesAndCardsOpenWithoutAConnectionAndSayHowOldTheyAre() {
    Shop shop = Shop.open("open");
    phone.signIn(shop.owner().handle(), People.PASSWORD);
    awaitTrue("() => navigator.serviceWorker.controller !== null", null);
    String recipe = "/recipes/" + shop.recipe();
    for (String path : new String[] {recipe, recipe + "/card"}) {
      phone.open(path);
      awaitKept(path);
    }
    line.cut();
    opensWithoutALine(recipe, "20 mm/s");
    opensWithoutALine(recipe + "/card", "Open class 4 beam");
    phone.press(".job-checks li:first-child .check");
    assertThat(phone.one(".job-checks input").first()).isChecked();
    // the card has its look: paper and screen share the sheet that came with it
    assertTrue(
        (Boolean)
            phone
                .page()
                .evaluate(
                    "() => getComputedStyle(document.querySelector('.job-head')).display ==="
                        + " 'flex'"));
  }

  @Test
  void aHelpersCardOpensWithoutAConnectionUntilItsLinkIsEnded() {
    Shop shop = Shop.open("closed");
    String path = "/cards/" + shop.link();
    phone.open(path);
    awaitKept(path);
    line.cut();
    opensWithoutALine(path, Shop.STEPS.get(1));
    line.mend();
    String links = "/api/v1/recipes/" + shop.recipe() + "/links";
    String id = shop.owner().asks().get(links).path("items[0].id");
    shop.owner().asks().delete(links + "/" + id).then().statusCode(204);
    phone.open(path);
    assertThat(phone.one("main")).containsText("This link was ended");
    awaitTrue("async p => (await caches.match(p, {ignoreVary: true})) === undefined", path);
    line.cut();
    phone.open(path);
    assertThat(phone.one("main")).containsText("This page is not kept on this phone");
  }

  @Test
  void whoeverSignsInOnAHelpersPhoneLeavesNoCardOfALinkThere() {
    Shop shop = Shop.open("closed");
    String path = "/cards/" + shop.link();
    phone.open(path);
    awaitKept(path);
    phone.signIn(Shop.open("closed").owner().handle(), People.PASSWORD);
    awaitTrue("async p => (await caches.match(p, {ignoreVary: true})) === undefined", path);
  }
}
