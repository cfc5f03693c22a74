package club.emberwell.web.sample;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.launch.StatementCount;
import club.emberwell.tag.TagCode;
import club.emberwell.web.frame.Browser;
import io.quarkus.test.junit.QuarkusTest;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jsoup.nodes.Element;
import org.jsoup.select.Elements;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Keeping a piece, finding it by its tag, counting lots and asking how many to order. */
@QuarkusTest
class StockPagesTest {
  private Person ada;
  private Browser browser;

  @BeforeEach
  void signIn() {
    ada = People.join();
    browser = Browser.of(ada);
  }

  private static String report(Person by) {
    Map<String, Object> laser =
        Map.of("source", "co2", "wavelength", "10.6 um", "ratedPower", "40 W", "motion", "gantry");
    Map<String, Object> settings =
        Map.of("power", "60 %", "speed", "400 mm/s", "lineSpacing", "0.1 mm");
    return by.makes(
        "reports",
        Map.of(
            "laser",
            laser,
            "material",
            "maple",
            "process",
            "surface-engraving",
            "settings",
            settings,
            "effect",
            "right",
            "notes",
            "Words of " + UUID.randomUUID()));
  }

  private String main() {
    return browser.page().selectFirst("main").text();
  }

  @Test
  void aPieceOfOnesReportIsKeptAndItsTagTypedLeadsThere() {
    String report = report(ada);
    Element link = browser.get("/reports/" + report).page().selectFirst("a[href^=/samples/new]");
    assertEquals("I keep this piece", link.text());
    browser.get(link.attr("href")).tidy();
    assertTrue(main().contains("Maple"), main());
    browser.send("main form", Map.of("box", "Box 3", "place", "left shelf"));
    assertEquals(303, browser.status());
    browser.follow().tidy();
    String address = browser.page().location();
    assertTrue(main().contains("Box 3, left shelf"), main());
    assertTrue(main().contains("60 %"), main());
    Element keep = browser.page().selectFirst("main a:contains(Add to my bench)");
    assertEquals("/recipes/new?report=" + report, keep.attr("href"));
    assertFalse(browser.page().select("svg.qr path").isEmpty());
    String code = browser.page().selectFirst(".tag-code").text();
    for (String typed : List.of(code, code.toLowerCase().replace("-", ""))) {
      browser.get("/samples?q=" + typed);
      assertEquals(303, browser.status());
      assertEquals(200, browser.follow().status());
      assertEquals(code, browser.page().selectFirst(".tag-code").text(), address);
    }
    assertEquals(200, browser.get("/t/" + code).follow().status());
    Browser other = Browser.of(People.join());
    assertEquals("/reports/" + report, other.get("/t/" + code).location());
    assertEquals("/reports/" + report, new Browser().get("/t/" + code).location());
  }

  @Test
  void aTagOfSomebodyElsesWithoutReportIsNotThereAndStrangersMaySignIn() {
    ada.makes("samples", Map.of("what", "Oak coaster"));
    String code = browser.get("/samples").page().selectFirst(".tag-code").text();
    assertEquals(404, Browser.of(People.join()).get("/t/" + code).status());
    Browser stranger = new Browser().get("/t/" + code);
    assertEquals(401, stranger.status());
    assertEquals("/t/" + code, stranger.page().selectFirst("input[name=to]").val());
  }

  @Test
  void aWrongCheckLetterIsExplainedWhereItWasTyped() {
    ada.makes("samples", Map.of("what", "Oak coaster"));
    String code = browser.get("/samples").page().selectFirst(".tag-code").text();
    String wrong = code.substring(0, 4) + (code.endsWith("7") ? "8" : "7");
    String shown = TagCode.read(wrong).remarks().get(0).detail();
    browser.get("/samples?q=" + wrong).tidy();
    assertEquals(422, browser.status());
    assertEquals("Error: " + shown, browser.page().selectFirst("#at-q .field-error").text());
    assertEquals(wrong, browser.field("q"));
    browser.get("/t/" + wrong);
    assertEquals(422, browser.status());
    assertTrue(main().contains(shown), main());
  }

  @Test
  void samplesAreEditedPrintedAndRemoved() {
    String id = ada.makes("samples", Map.of("what", "Oak coaster", "box", "Box 1"));
    browser.get("/samples/" + id + "/edit").tidy();
    assertEquals("Box 1", browser.field("box"));
    browser.send("main form", Map.of("what", "", "box", "Box 9"));
    assertEquals(422, browser.status());
    assertEquals("Box 9", browser.field("box"), "nothing typed is lost");
    browser.send("main form", Map.of("what", "Oak coaster, second try"));
    assertEquals("/samples/" + id + "?done=changed", browser.location());
    browser.get("/samples/labels?id=" + id).tidy();
    Element label = browser.page().selectFirst("svg.label");
    assertEquals("62mm", label.attr("width"));
    assertEquals("0 0 62 29", label.attr("viewBox"));
    assertEquals(
        List.of("Oak coaster, second try", "Box 9"), label.select("text").eachText().subList(1, 3));
    browser.get("/samples/" + id + "/withdraw").send("main form", Map.of());
    assertEquals(200, browser.follow().status());
    assertTrue(main().contains("No sample yet"), main());
    assertEquals(404, browser.get("/samples/" + id).status());
  }

  @Test
  void theListAndTheLabelsCostTheSameHoweverManyThereAre() {
    ada.makes("samples", Map.of("report", report(ada)));
    List<String> one = statements();
    for (int i = 0; i < 3; i++) {
      ada.makes("samples", Map.of("report", report(ada), "box", "Box " + i));
    }
    List<String> four = statements();
    assertEquals(4, browser.page().select("svg.label").size());
    assertEquals(one.size(), four.size(), one + " " + four);
  }

  /** Of the second round: what is read once for all is read by then. */
  private List<String> statements() {
    browser.get("/samples").get("/samples/labels");
    return StatementCount.ofRequests(() -> browser.get("/samples").get("/samples/labels"));
  }

  private static Map<String, String> lot() {
    Map<String, String> lot = new HashMap<>();
    lot.put("supplier", "North Blanks");
    lot.put("material", "stainless steel");
    lot.put("colour", "navy");
    lot.put("received", "50");
    lot.put("usable", "46");
    lot.put("burned", "12");
    lot.put("date", "2026-09-12");
    return lot;
  }

  @Test
  void aLotIsCountedAndTellsHowManyToOrder() {
    browser.get("/lots/new").tidy().send("main form", lot());
    assertEquals("/lots?done=added", browser.location());
    browser.follow().tidy();
    assertTrue(main().contains("46 of 50 usable, 12 burned, 34 left"), main());
    browser.get("/lots/order").tidy();
    assertEquals("all", browser.field("lots"));
    browser.get(
        "/lots/order?lines.0.name=navy&lines.0.pieces=24&lines.1.name=black&lines.1.pieces=12"
            + "&tests=1&chance=90&lots=all");
    browser.tidy();
    Elements rows = browser.page().select("main tbody tr");
    assertEquals(2, rows.size());
    String sentence =
        "Order %s navy and %s black."
            .formatted(
                rows.get(0).select("td").get(0).text(), rows.get(1).select("td").get(0).text());
    assertEquals(sentence, browser.page().selectFirst("#answer").text());
    assertTrue(main().contains("at least 9 of 10 such orders"), main());
    assertTrue(main().contains("From one lot of yours: 46 of 50 pieces were usable."), main());
  }

  @Test
  void besideTheFormOfALotStandTheLastOnesOrThoseOfItsSupplier() {
    browser.get("/lots/new").tidy();
    assertTrue(browser.page().select("main aside").isEmpty());
    String dell = ada.makes("lots", Map.of("supplier", "Dell", "material", "maple", "received", 9));
    ada.makes("lots", Map.of("supplier", "North", "material", "slate", "received", 7));
    List<String> few = StatementCount.ofRequests(() -> browser.get("/lots/new"));
    for (int i = 0; i < 5; i++) {
      ada.makes("lots", Map.of("supplier", "dell", "material", "birch", "received", 10 + i));
    }
    List<String> many = StatementCount.ofRequests(() -> browser.get("/lots/new"));
    assertEquals(few.size(), many.size(), () -> String.join("\n", many));
    Elements last = browser.tidy().page().select("main aside li");
    assertEquals(5, last.size());
    assertTrue(last.get(0).text().contains("dell, 14 received"), last.text());
    browser.get("/lots/" + dell + "/edit").tidy();
    assertEquals("Other lots of Dell", browser.page().select("main aside h2").text());
    assertEquals(5, browser.page().select("main aside li").size());
    assertTrue(browser.page().select("main aside a[href=/lots/" + dell + "]").isEmpty());
  }

  @Test
  void aSlipInALotIsSaidAtItsFieldAndNothingIsLost() {
    Map<String, String> lot = lot();
    lot.put("usable", "51");
    browser.get("/lots/new").send("main form", lot);
    assertEquals(422, browser.status());
    assertEquals(
        "Error: 51 usable of 50 received cannot be.",
        browser.page().selectFirst("#at-usable .field-error").text());
    assertEquals("North Blanks", browser.field("supplier"));
    lot.put("usable", "many");
    browser.send("main form", lot);
    assertEquals(422, browser.status());
    assertFalse(browser.page().select("#at-usable .field-error").isEmpty());
    lot.put("usable", "46");
    browser.send("main form", lot);
    assertEquals(303, browser.status());
  }

  @Test
  void aLotIsEditedAndRemoved() {
    String id = ada.makes("lots", Map.of("supplier", "Dell", "material", "maple", "received", 9));
    browser.get("/lots/" + id).tidy();
    assertTrue(main().contains("9 received, not inspected yet"), main());
    browser.get("/lots/" + id + "/edit").tidy().send("main form", Map.of("usable", "8"));
    browser.follow();
    assertTrue(main().contains("8 of 9 usable"), main());
    browser.get("/lots/" + id + "/withdraw").tidy().send("main form", Map.of());
    browser.follow();
    assertTrue(main().contains("No lot yet"), main());
  }

  @ParameterizedTest
  @CsvSource({
    "lines.0.pieces=-3, lines.0.pieces",
    "lines.0.pieces=10000, lines.0.pieces",
    "lines.0.pieces=many, lines.0.pieces",
    "lines.0.pieces=24&chance=100, chance",
    "lines.0.pieces=24&share=120, share",
    "lines.0.pieces=24&share=most, share",
    "lines.0.pieces=24&usable=30&received=20, usable",
    "lines.0.pieces=24&tests=-1, tests",
    "chance=90, lines.0.pieces",
    "lines.0.pieces=24&lots=Nobody, lots"
  })
  void whatCannotBeOrderedIsSaidAtTheField(String asked, String field) {
    browser.get("/lots/order?" + asked).tidy();
    assertEquals(422, browser.status());
    Element at = browser.page().getElementById("at-" + field);
    assertFalse(at.select(".field-error").isEmpty(), main());
    assertTrue(browser.page().select("#answer").isEmpty());
  }
}
