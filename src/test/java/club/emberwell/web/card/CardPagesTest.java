package club.emberwell.web.card;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.card.Shop;
import club.emberwell.web.frame.Browser;
import com.google.zxing.BinaryBitmap;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.common.GlobalHistogramBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.Test;

/** Job cards on pages, without scripts: written, looked at, given to a helper, taken back. */
@QuarkusTest
class CardPagesTest {
  private static final Pattern ROW = Pattern.compile("M(\\d+) (\\d+)h(\\d+)v1");

  private static String main(Browser browser) {
    return browser.page().selectFirst("main").text();
  }

  private static String card(Shop shop) {
    return "/recipes/" + shop.recipe() + "/card";
  }

  /** What a phone reads in the square of a page: drawn large, read by ZXing. */
  private static String square(Document page) throws Exception {
    Element svg = page.selectFirst("svg.qr");
    int side = Integer.parseInt(svg.attr("viewBox").split(" ")[2]);
    int zoom = 4;
    int[] pixels = new int[side * zoom * side * zoom];
    Arrays.fill(pixels, 0xFFFFFF);
    Matcher row = ROW.matcher(svg.selectFirst("path").attr("d"));
    while (row.find()) {
      int x = Integer.parseInt(row.group(1));
      int y = Integer.parseInt(row.group(2));
      for (int dy = 0; dy < zoom; dy++) {
        int from = (y * zoom + dy) * side * zoom + x * zoom;
        Arrays.fill(pixels, from, from + Integer.parseInt(row.group(3)) * zoom, 0);
      }
    }
    RGBLuminanceSource picture = new RGBLuminanceSource(side * zoom, side * zoom, pixels);
    return new QRCodeReader()
        .decode(new BinaryBitmap(new GlobalHistogramBinarizer(picture)))
        .getText();
  }

  @Test
  void aCardBeginsWithWhatIsGoneThroughBeforeTheJob() {
    Shop shop = Shop.open("open");
    Browser browser = Browser.of(shop.owner());
    Document page = browser.get("/recipes/" + shop.recipe()).tidy().page();
    assertEquals(card(shop), page.selectFirst("main a:contains(Job card)").attr("href"));
    page = browser.get(card(shop)).tidy().page();
    assertEquals("Before the job", page.selectFirst("main h2").text());
    List<String> lines = page.select(".job-checks .check").eachText();
    assertEquals(8, lines.size(), lines.toString());
    assertTrue(lines.get(3).startsWith("Open class 4 beam"), lines.toString());
    assertEquals(Shop.OWN_LINES, lines.subList(6, 8));
    // ticked on the phone alone: there is nothing to send and nothing it would be sent as
    assertEquals(8, page.select("input[type=checkbox]:not([name])").size());
    assertTrue(page.select("main form").isEmpty());
    String said = main(browser);
    for (String part :
        List.of(
            "Cut on Long tube",
            "in: North shed",
            "Power 60 %",
            "Speed 20 mm/s",
            "Focus offset -1 mm",
            "Material Birch plywood",
            "Thickness 3 mm",
            "Supplier Dell Timber",
            "Coaster jig, kept: Shelf two",
            "Position 5: column 2, row 2; its middle 165 mm from the left, 150 mm from the back",
            Shop.STEPS.get(1),
            "Green pair: covered.",
            "Old pair: not covered at this wavelength.",
            "A calculated minimum. It does not mean that eyewear is enough: ask a laser safety"
                + " officer; local rules decide.",
            "Sort out pieces with knots.")) {
      assertTrue(said.replace('\u2212', '-').contains(part), part + " in " + said);
    }
  }

  @Test
  void theSameCautionsStandOnTheCardAsOnTheRecipe() {
    Shop shop = Shop.open("closed");
    Browser browser = Browser.of(shop.owner());
    List<String> recipe =
        browser.get("/recipes/" + shop.recipe()).page().select(".caution h3").eachText();
    List<String> card = browser.get(card(shop)).page().select(".job-care h3").eachText();
    assertFalse(card.isEmpty());
    assertEquals(recipe.stream().map(t -> t.replace(" sources disagree", "")).toList(), card);
  }

  @Test
  void theSquareLeadsBackToExactlyThisRevision() throws Exception {
    Shop shop = Shop.open("closed");
    String secret = shop.link();
    Browser browser = Browser.of(shop.owner());
    String own = square(browser.get(card(shop)).page());
    assertTrue(own.endsWith(card(shop) + "?revision=1"), own);
    String linked = square(new Browser().get("/cards/" + secret).page());
    assertTrue(linked.endsWith("/cards/" + secret + "?revision=1"), linked);
    shop.faster("25 mm/s");
    Browser helper = new Browser();
    String printed = main(helper.get(linked.substring(linked.indexOf("/cards/"))).tidy());
    assertTrue(printed.contains("Changed since this card was printed."), printed);
    assertTrue(printed.contains("This is revision 1; the newest is 2."), printed);
    assertTrue(printed.contains("20 mm/s"), printed);
    String newest = helper.page().selectFirst("main a:contains(Open the newest)").attr("href");
    String now = main(helper.get(newest).tidy());
    assertFalse(now.contains("Changed since"), now);
    assertTrue(now.contains("25 mm/s"), now);
    assertTrue(main(browser.get(card(shop) + "?revision=1")).contains("Changed since"));
  }

  @Test
  void aHelperIsGivenALinkAndItIsTakenBack() {
    Shop shop = Shop.open("closed");
    Browser browser = Browser.of(shop.owner());
    String links = "/recipes/" + shop.recipe() + "/links";
    browser.get(links).tidy().send("main form", Map.of());
    assertEquals(200, browser.status());
    assertEquals("no-store", browser.header("Cache-Control"));
    String url = browser.field("link");
    String path = url.substring(url.indexOf("/cards/"));
    assertTrue(path.matches("/cards/[\\w-]{43}"), path);
    assertFalse(browser.get(links).tidy().text().contains(path));
    assertTrue(main(browser).contains("Not opened yet."));
    Browser helper = new Browser();
    helper.get(path).tidy();
    assertEquals(200, helper.status());
    assertTrue(main(browser.get(links)).contains("Last opened"));
    browser.send("main li form", Map.of());
    assertEquals(303, browser.status());
    assertTrue(main(browser.follow().tidy()).contains("Ended "));
    helper.get(path);
    assertEquals(410, helper.status());
    assertTrue(main(helper).contains("This link was ended"), main(helper));
    helper.get("/cards/" + "x".repeat(43));
    assertEquals(404, helper.status());
  }

  @Test
  void thePageOfALinkIsReadOnlyAndToldToNobody() {
    Shop shop = Shop.open("closed");
    String path = "/cards/" + shop.link();
    Response answer = given().get(path);
    answer
        .then()
        .statusCode(200)
        .header("X-Robots-Tag", "noindex")
        .header("Referrer-Policy", "no-referrer")
        .header("Emberwell-Member", "-");
    Document page = new Browser().get(path).tidy().page();
    assertEquals("noindex", page.selectFirst("meta[name=robots]").attr("content"));
    assertTrue(page.select("form[method=post]").isEmpty());
    assertNull(page.selectFirst("link[rel=canonical]"));
    String said = page.outerHtml();
    for (String own :
        List.of(shop.owner().handle(), shop.owner().id(), shop.recipe(), shop.fixture())) {
      assertFalse(said.contains(own), own);
    }
    assertTrue(given().get("/robots.txt").asString().contains("Disallow: /cards/"));
  }

  @Test
  void somebodyWithoutAnAccountChoosesUnitsOnTheCardItself() {
    Shop shop = Shop.open("closed");
    String path = "/cards/" + shop.link();
    Browser helper = new Browser();
    helper.get(path + "?speed=%5Bin_i%5D/min&length=%5Bin_i%5D").tidy();
    String said = main(helper);
    // 20 mm/s = 47.244 in/min, 3 mm = 0.118 in: NIST SP 811
    assertTrue(said.contains("Speed 47.24"), said);
    assertTrue(said.contains("in/min"), said);
    assertTrue(said.contains("Thickness 0.118"), said);
    assertEquals("[in_i]/min", helper.page().selectFirst("#speed option[selected]").val());
    assertTrue(main(helper.get(path + "?speed=kg&length=")).contains("Speed 20 mm/s"));
    Browser owner = Browser.of(shop.owner());
    assertNull(owner.get(path).page().selectFirst(".job-units"), "members have units of their own");
  }

  @Test
  void stepsFixtureAndRoomAreWrittenOnTheFormWithFaultsAtTheirFields() {
    Shop shop = Shop.open("closed");
    Browser browser = Browser.of(shop.owner());
    String edit = "/recipes/" + shop.recipe() + "/edit";
    browser.get(edit).tidy();
    assertEquals(String.join("\n", Shop.STEPS), browser.field("steps"));
    Map<String, String> fields = new HashMap<>();
    fields.put("steps", "Lay it in.\n\n" + "z".repeat(300));
    fields.put("position", "9");
    fields.put("reason", "More steps.");
    browser.send("form.post-form", fields);
    assertEquals(422, browser.status());
    browser.tidy();
    assertEquals(
        "Error: Line 3: At most 240 characters fit here.",
        browser.page().select("#at-steps .field-error").text());
    assertEquals(
        "Error: This fixture has positions 1 to 6.",
        browser.page().select("#at-position .field-error").text());
    assertTrue(browser.field("steps").contains("Lay it in."), "what was typed stays");
    fields.put("steps", "Lay it in.\n\nClose the lid.");
    fields.put("position", "");
    browser.send("form.post-form", fields);
    assertEquals(303, browser.status(), () -> main(browser));
    String said = main(browser.get(card(shop)).tidy());
    assertTrue(said.contains("Lay it in. Close the lid."), said);
    assertTrue(said.contains("6 pieces in one load"), said);
  }

  @Test
  void aRoomTakesOwnLinesAndShowsTheStandingOnes() {
    Shop shop = Shop.open("closed");
    Browser browser = Browser.of(shop.owner());
    String path = "/rooms/" + shop.room();
    assertTrue(main(browser.get(path).tidy()).contains("A fire extinguisher is within reach."));
    assertTrue(main(browser).contains(Shop.OWN_LINES.get(0)));
    browser.get(path + "/edit").tidy();
    assertEquals(String.join("\n", Shop.OWN_LINES), browser.field("lines"));
    browser.send("main form", Map.of("lines", "Shoes on.\n" + "q".repeat(130)));
    assertEquals(422, browser.status());
    assertEquals(
        "Error: Line 2: At most 120 characters fit here.",
        browser.page().select("#at-lines .field-error").text());
    browser.send("main form", Map.of("lines", "Shoes on."));
    assertEquals(303, browser.status());
    assertTrue(main(browser.get(card(shop))).contains("Shoes on."));
  }

  @Test
  void theCardsOfOthersAreNotThere() {
    Shop shop = Shop.open("closed");
    Browser other = Browser.of(Shop.open("closed").owner());
    for (String path : List.of("/card", "/links")) {
      other.get("/recipes/" + shop.recipe() + path);
      assertEquals(404, other.status(), path);
    }
  }
}
