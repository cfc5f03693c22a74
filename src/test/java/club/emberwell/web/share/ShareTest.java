package club.emberwell.web.share;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.member.club.ClubOptions;
import club.emberwell.web.frame.Browser;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import javax.imageio.ImageIO;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.Test;

/** What is passed on of a page, and what a newcomer is shown first. */
@QuarkusTest
class ShareTest {
  @Inject ClubOptions club;

  @Test
  void aReportHasAPictureForLinkPreviewsUnlessTheClubIsClosed() throws IOException {
    Person member = People.join();
    String report = "/reports/" + post(member);
    Document page = new Browser().get(report).tidy().page();
    String picture = content(page, "og:image").replaceFirst("^https?://[^/]+", "");
    assertEquals("1200", content(page, "og:image:width"));
    assertFalse(content(page, "og:image:alt").isEmpty());
    BufferedImage drawn = picture(picture);
    assertEquals(1200, drawn.getWidth());
    assertEquals(630, drawn.getHeight());
    club.readingPublic(false);
    try {
      assertTrue(new Browser().get(report).page().select("meta[property^=og:]").isEmpty());
      given().get(picture).then().statusCode(401);
    } finally {
      club.readingPublic(true);
    }
    given().get("/preview/reports/" + UUID.randomUUID() + ".png").then().statusCode(404);
  }

  private static String post(Person member) {
    return member
        .asks()
        .header("Idempotency-Key", People.freshHandle())
        .body(
            Map.of(
                "laser",
                Map.of(
                    "source",
                    "co2",
                    "wavelength",
                    "10.6 um",
                    "ratedPower",
                    "40 W",
                    "motion",
                    "gantry"),
                "material",
                "slate",
                "process",
                "surface-engraving",
                "settings",
                Map.of("power", "50 %", "speed", "400 mm/s", "lineSpacing", "0.1 mm"),
                "effect",
                "right"))
        .post("/api/v1/reports")
        .then()
        .statusCode(201)
        .extract()
        .path("id");
  }

  private static String content(Document page, String property) {
    return page.select("meta[property=" + property + "]").attr("content");
  }

  private static BufferedImage picture(String path) throws IOException {
    byte[] png =
        given().get(path).then().statusCode(200).contentType("image/png").extract().asByteArray();
    return ImageIO.read(new ByteArrayInputStream(png));
  }

  @Test
  void aQuestionHasAPictureToo() throws IOException {
    Person member = People.join();
    String question =
        member
            .asks()
            .header("Idempotency-Key", People.freshHandle())
            .body(Map.of("title", "Why does it char?", "text", "See above."))
            .post("/api/v1/questions")
            .then()
            .statusCode(201)
            .extract()
            .path("id");
    assertEquals(630, picture("/preview/ask/" + question + ".png").getHeight());
  }

  @Test
  void textInAPictureIsCutToWhatFits() {
    Card card =
        new Card("club", "wide ".repeat(500), "\u202e\u0007 lead", List.of("a", " ", "b"), null);
    assertEquals(Card.TITLE, card.title().length());
    assertEquals("lead", card.lead());
    assertEquals(List.of("a", "b"), card.lines());
    assertTrue(CardPainter.png(card).length > 0);
  }

  @Test
  void aLinkIsSharedAsTextAndAsASquareButOnlyToThisSite() {
    Browser stranger = new Browser().get("/share?of=%2Frange%3Fq%3Dslate%26source%3Dco2").tidy();
    assertTrue(stranger.field("link").endsWith("/range?q=slate&source=co2"));
    assertEquals(1, stranger.page().select("svg.qr").size());
    for (String foreign : List.of("https://elsewhere.example/", "//elsewhere.example/", "")) {
      String link = new Browser().get("/share?of=" + foreign).field("link");
      assertFalse(link.contains("elsewhere"), link);
    }
    Browser lengthy = new Browser().get("/share?of=/" + "a".repeat(1900)).tidy();
    assertEquals(200, lengthy.status());
  }

  @Test
  void aNewcomersListTicksItselfOffAndCanBePutAway() {
    Person newcomer = People.join();
    Browser browser = Browser.of(newcomer);
    assertEquals(0, done(browser.get("/bench").tidy()));
    browser.get("/help/range").tidy();
    assertEquals(1, done(browser.get("/bench")));
    browser.get("/me").send("form[action=/me/preferences]", Map.of());
    assertEquals(2, done(browser.get("/bench")));
    post(newcomer);
    assertEquals(3, done(browser.get("/bench")));
    browser.send("form[action=/bench/first-steps]", Map.of());
    assertTrue(browser.follow().page().select(".step-list").isEmpty());
  }

  private static int done(Browser bench) {
    return bench.page().select(".step-list .step-done").size();
  }
}
