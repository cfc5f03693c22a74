package club.emberwell.web.bench;

import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.exchange.bench.SentBench;
import club.emberwell.exchange.bench.Zips;
import club.emberwell.web.frame.Browser;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.time.Instant;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Saving a copy of the bench, being reminded of it, looking at one and restoring it. */
@QuarkusTest
class CopyPagesTest {
  @Inject SentBench sent;

  private Person ada;
  private Browser browser;

  @BeforeEach
  void signIn() {
    ada = People.join();
    browser = Browser.of(ada);
  }

  private String main() {
    return browser.page().selectFirst("main").text();
  }

  private void makeFixture(String name) {
    ada.makes("fixtures", Map.of("name", name, "rows", 1, "columns", 1));
  }

  @Test
  void theBenchRemindsUntilACopyIsSavedAndAgainAfterAChange() {
    browser.get("/bench").tidy();
    assertFalse(main().contains("no copy of your bench"), "nothing lies on it");
    assertFalse(browser.page().select("main a[href=/bench/copy]").isEmpty());
    makeFixture("Jig");
    browser.get("/bench").tidy();
    assertTrue(main().contains("There is no copy of your bench yet."), main());
    browser.get("/bench/copy").tidy();
    assertTrue(main().contains("You have not saved one yet."), main());

    browser.get(browser.page().selectFirst("main a[download]").attr("href"));
    assertEquals(200, browser.status());
    assertEquals("application/zip", browser.header("Content-Type"));
    assertEquals("attachment; filename=\"bench.zip\"", browser.header("Content-Disposition"));
    assertEquals("no-store", browser.header("Cache-Control"));

    browser.get("/bench");
    assertFalse(main().contains("copy ("), main());
    browser.get("/bench/copy");
    assertTrue(main().contains("Nothing has changed since."), main());
    makeFixture("Another jig");
    browser.get("/bench").tidy();
    assertTrue(main().contains("Your bench has changed since your last copy ("), main());
  }

  private void send(byte[] file) {
    browser
        .get("/bench/copy")
        .tidy()
        .sendFiles("main form[enctype]", Map.of(), Map.of("file", file))
        .tidy();
  }

  @Test
  void aCopyIsLookedAtAndRestored() throws Exception {
    send(Zips.mixed());
    assertEquals(200, browser.status());
    assertTrue(
        main().contains("The bench of ben, saved 2026-03-01. Nothing is saved yet."), main());
    assertTrue(main().contains("Restore 1 thing"), main());
    assertTrue(main().contains("Fixtures 1 0 0 2"), main());
    assertTrue(main().contains("Not restored (2)"), main());
    assertFalse(main().contains("/rows"), main());
    assertTrue(main().contains("rows: From 1 to"), main());
    ada.asks().get("/api/v1/fixtures").then().body("items.size()", equalTo(0));

    Map<String, String> asItWas =
        Map.of("id", browser.page().selectFirst("input[name=id]").attr("value"));
    browser.send("form[action=/bench/copy/restore]", Map.of()).tidy();
    assertEquals(200, browser.status());
    assertTrue(main().contains("1 thing restored"), main());
    ada.asks()
        .get("/api/v1/fixtures")
        .then()
        .body("items.title", equalTo(java.util.List.of("Tray for pens")));

    // the page sent once more, as by going back: the file is no longer kept
    browser.get("/bench/copy");
    send(Zips.mixed());
    browser.send("form[action=/bench/copy/restore]", asItWas).tidy();
    assertEquals(422, browser.status());
    assertTrue(main().contains("The file is no longer here. Choose it once more."), main());
  }

  @Test
  void whatIsNoCopyIsSaidAtItsField() {
    send("hello".getBytes(java.nio.charset.StandardCharsets.UTF_8));
    assertEquals(422, browser.status());
    assertTrue(
        browser.page().selectFirst("#at-file .field-error").text().contains("This is no copy"));
    browser.get("/bench/copy").sendFiles("main form[enctype]", Map.of(), Map.of()).tidy();
    assertEquals(422, browser.status());
    assertTrue(
        browser.page().selectFirst("#at-file .field-error").text().contains("Choose the file"));
  }

  @Test
  void whatNobodyCameBackForIsForgotten() throws Exception {
    send(Zips.mixed());
    sent.forgetOlder(Instant.now().plusSeconds(1));
    browser.send("form[action=/bench/copy/restore]", Map.of()).tidy();
    assertEquals(422, browser.status());
  }
}
