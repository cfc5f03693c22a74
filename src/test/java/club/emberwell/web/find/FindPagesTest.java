package club.emberwell.web.find;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.web.frame.Browser;
import io.quarkus.test.junit.QuarkusTest;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;

/** Seven members on slate with known doses: 8 W x pct / (v x 0.1 mm). */
@QuarkusTest
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class FindPagesTest {
  private static final String LOT = "lot-" + Long.toString(System.nanoTime(), 36);
  private Person reader;

  @BeforeEach
  void sevenMembersPost() {
    // once, but not before the first test: until then nobody knows the server's port
    if (reader != null) {
      return;
    }
    // doses 0.5, 1, 1.5, 2, 2.5, 3, 3.5 J/mm2 at 5 W and 0.1 mm: v = 5 / (dose x 0.1)
    double[] speeds = {100, 50, 33.3333, 25, 20, 16.6667, 14.2857};
    for (double speed : speeds) {
      Person person = People.join();
      post(person, speed + " mm/s", "right");
      reader = person;
    }
    post(reader, "400 mm/s", "too-little");
  }

  private static void post(Person person, String speed, String effect) {
    Map<String, Object> laser =
        Map.of("source", "diode", "wavelength", "455 nm", "ratedPower", "10 W", "motion", "gantry");
    Map<String, Object> settings = Map.of("power", "50 %", "speed", speed, "lineSpacing", "0.1 mm");
    person
        .asks()
        .header("Idempotency-Key", "\"" + java.util.UUID.randomUUID() + "\"")
        .body(
            Map.of(
                "laser", laser,
                "material", "slate",
                "process", "surface-engraving",
                "settings", settings,
                "effect", effect,
                "lot", LOT))
        .post("/api/v1/reports")
        .then()
        .statusCode(201);
  }

  @Test
  void theAnswerSaysItsMiddleTheNextMemberAndItsCounts() {
    Browser browser = new Browser().get("/?q=" + LOT).tidy();
    String answer = browser.page().select(".answer").text();
    assertTrue(answer.contains("Slate, surface engraving"), answer);
    assertTrue(answer.contains("Right at about 2 J/mm²"), answer);
    // (7 - 1) / (7 + 1) = 0.75
    assertTrue(answer.contains("7 in 10 further members would be between 0.5 and 3.5."), answer);
    assertTrue(answer.contains("some evidence 7 members, 8 tests"), answer);
  }

  @Test
  void eachTestIsADotAndALineOfTheTableThatLeadToItsReport() {
    Document page = new Browser().get("/?q=" + LOT).page();
    assertEquals(8, page.select(".dose-plot a").size());
    assertEquals(7, page.select(".dose-plot circle.t").size());
    assertEquals(8, page.select(".answer tbody a[href^=/reports/]").size());
    for (var dot : page.select(".dose-plot a")) {
      assertTrue(dot.attr("href").startsWith("/reports/"), dot.outerHtml());
      assertTrue(dot.select("title").text().matches("(Right|Too little) at .* J/mm², .+"));
    }
  }

  @Test
  void threeWholeSettingsOfDifferentMembersAreShown() {
    Document page = Browser.of(reader).get("/?q=" + LOT).tidy().page();
    assertEquals(3, page.select(".wholes li").size());
    assertEquals(3, page.select(".wholes a[href$=/repeat]").size());
    assertTrue(page.select(".whole").first().text().startsWith("50 %"), page.text());
    assertEquals(0, new Browser().get("/?q=" + LOT).page().select("a[href$=/repeat]").size());
  }

  @Test
  void theReadersUnitsShowWithTheirOwnOrder() {
    Browser browser = Browser.of(reader).get("/me");
    browser.send("form[action=/me/preferences]", Map.of("units.SPEED", "[in_i]/s"));
    browser.get("/?q=" + LOT);
    assertTrue(browser.page().select(".answer").text().contains("in/s"));
    browser.get("/me").send("form[action=/me/preferences]", Map.of("units.SPEED", "mm/s"));
  }

  @Test
  void aFacetIsALinkThatChoosesAndTakesAway() {
    Browser browser = new Browser().get("/?q=" + LOT);
    String choose = browser.page().select("#effect-too-little").attr("href");
    browser.get(choose).tidy();
    assertTrue(browser.page().select(".found-line").text().startsWith("1 report"));
    assertNotNull(browser.page().selectFirst(".chips a"));
    String takeAway = browser.page().select("#effect-too-little").attr("href");
    browser.get(takeAway);
    assertTrue(browser.page().select(".found-line").text().startsWith("8 reports"));
    assertNull(browser.page().selectFirst(".chips a"));
  }

  @Test
  void nothingFoundNamesAWayOut() {
    Browser browser = new Browser().get("/?q=" + LOT + "&source=co2").tidy();
    assertTrue(browser.page().select(".nothing").text().contains("Nobody has posted this yet"));
    assertFalse(browser.page().select(".nothing li a").isEmpty());
  }

  @Test
  void aProhibitedMaterialAnswersWithItsHazardFirst() {
    Document page = new Browser().get("/?q=pvc").tidy().page();
    assertTrue(page.select(".cautions").text().contains("hydrogen chloride"));
    assertTrue(
        page.html().indexOf("class=\"box-danger caution\"")
            < page.html().indexOf("class=\"find-answer\""));
  }

  @Test
  void junkInTheAddressIsToldAndHarmsNothing() {
    Browser browser =
        new Browser().get("/?speedMin=fast&source=warp&page=-3&near=x&q=%22%28%2B%2D").tidy();
    assertEquals(200, browser.status());
    assertTrue(browser.page().select(".box-warn").size() >= 3);
  }

  @Test
  void theRangePageOpensEveryNumberAndJudgesTheReadersMachine() {
    Browser browser = Browser.of(reader);
    browser
        .get("/bench/machines/new")
        .send(
            "main form",
            Map.of(
                "name",
                "Mine",
                "source",
                "diode",
                "wavelength",
                "450 nm",
                "ratedPower",
                "10 W",
                "motion",
                "gantry",
                "maxSpeed",
                "200 mm/s"));
    browser.get("/?q=" + LOT).tidy();
    String answer = browser.page().select(".answer").text();
    assertTrue(answer.contains("on your Mine"), answer);
    // 2 J/mm2 at 50 % of 10 W and 0.1 mm: 25 mm/s
    assertTrue(answer.contains("Start at 50 % · 25 mm/s · 0.1 mm · 1 pass"), answer);
    assertTrue(answer.contains("Your machine's spot size is missing."), answer);
    String mend = browser.page().select(".answer a[href^=/bench/machines/]").attr("href");
    String machine = mend.substring(mend.lastIndexOf('/') + 1);
    String post = browser.page().select(".answer a[href^=/post?]").attr("href");
    browser.get("/range?q=" + LOT).tidy();
    assertTrue(browser.page().text().contains("Hyndman"), "source of the quantiles");
    browser.get("/range?q=" + LOT + "&machine=" + machine).tidy();
    assertTrue(browser.page().text().contains("On my machine: 10 W diode 450 nm"));
    assertTrue(browser.page().select(".answer").text().contains("Start at 50 % · 25 mm/s"));
    assertEquals(200, browser.status());
    browser.get("/range?q=" + LOT + "&machine=" + java.util.UUID.randomUUID()).tidy();
    assertTrue(browser.page().text().contains("not on your bench"));
    browser.get(post).tidy();
    assertEquals("25", browser.page().select("[name=settings.speed]").val());
    assertEquals("mm/s", browser.page().select("[name=unit.settings.speed][checked]").val());
    assertEquals("Slate", browser.page().select("[name=material]").val());
  }

  @Test
  void theRangePageSaysMiddleQuartilesIntervalAndBand() {
    String range = new Browser().get("/range?q=" + LOT).tidy().page().select(".range").text();
    // Hyndman & Fan 1996, type 8, by hand: h = (7 + 1/3) / 4 + 1/3 = 2.1667, 1 + 0.1667 x 0.5
    assertTrue(range.contains("Middle 2 J/mm², half of the members between 1.1 and 2.9"), range);
    // order statistics: 7 values, ranks 1 and 7 at 98.4 %
    assertTrue(range.contains("between 0.5 and 3.5 (95 % interval)"), range);
  }

  @Test
  void combinationsStandSideBySideOnOneAxis() {
    Browser browser = new Browser().get("/compare").tidy();
    assertEquals(200, browser.status());
    browser.get("/compare?with=q%3D" + LOT + "&with=q%3D" + LOT + "%26effect%3Dright").tidy();
    assertEquals(2, browser.page().select("main section:not(.caution) > h2").size());
    browser.get("/compare?with=q%3Da&with=q%3Db&with=q%3Dc&with=q%3Dd&with=q%3De").tidy();
    assertTrue(browser.page().text().contains("At most 4"));
  }

  @Test
  void severalWorksAreAListWithNoNumberOverAll() {
    String lot = "pair-" + Long.toString(System.nanoTime(), 36);
    for (String thickness : new String[] {"3 mm", "6 mm"}) {
      for (int i = 0; i < 3; i++) {
        Person person = People.join();
        person
            .asks()
            .header("Idempotency-Key", "\"" + java.util.UUID.randomUUID() + "\"")
            .body(
                Map.of(
                    "laser",
                    Map.of(
                        "source",
                        "co2",
                        "wavelength",
                        "10600 nm",
                        "ratedPower",
                        "60 W",
                        "motion",
                        "gantry"),
                    "material",
                    "birch plywood",
                    "thickness",
                    thickness,
                    "process",
                    "cut",
                    "settings",
                    Map.of("power", "60 %", "speed", 8 + i + " mm/s"),
                    "effect",
                    "right",
                    "lot",
                    lot))
            .post("/api/v1/reports")
            .then()
            .statusCode(201);
      }
    }
    for (String path : new String[] {"/?q=", "/range?q="}) {
      Document page = new Browser().get(path + lot).tidy().page();
      assertEquals(2, page.select(".works li").size(), path);
      assertTrue(page.select(".works").text().contains("Birch plywood, 3 mm"), path);
      assertTrue(page.select(".answer").isEmpty(), path);
    }
    // each line leads to the answer for that work alone
    String href = new Browser().get("/range?q=" + lot).page().select(".works li a").attr("href");
    Document one = new Browser().get(href).tidy().page();
    assertEquals(1, one.select(".answer").size());
    assertTrue(one.select(".works li").isEmpty());
  }

  @Test
  void aMembersNameLeadsToWhatTheyKnow() {
    Document page = new Browser().get("/?q=" + LOT).page();
    String href = page.select("a[href$=/members/" + reader.handle() + "]").attr("href");
    Document person = new Browser().get(href).tidy().page();
    assertEquals(reader.handle(), person.selectFirst("h1").text());
    assertTrue(person.select("main").text().contains("1 of 2 tests right"), href);
    assertEquals(2, person.select(".hit").size());
    assertEquals(404, new Browser().get("/members/nobody-of-this-name").status());
  }

  @Test
  void eachFoundResultIsAddedToTheBenchOfWhoeverIsSignedIn() {
    String found = "/?sort=dose&q=" + LOT;
    assertTrue(new Browser().get(found).page().select(".hit .hit-keep").isEmpty());
    Person other = People.join();
    Browser browser = Browser.of(other);
    Document page = browser.get(found).tidy().page();
    assertEquals(page.select(".hit").size(), page.select(".hit .hit-keep").size());
    // two of one piece of work may differ in nothing but what came of them
    String said =
        Stream.of(page.selectFirst(".hit .hit-keep").attr("aria-labelledby").split(" "))
            .map(id -> page.getElementById(id).text())
            .collect(Collectors.joining(" "));
    assertTrue(said.matches("Add to my bench Slate.* 50 %.*"), said);
    assertTrue(said.contains("Too little") && said.contains(reader.handle()), said);
    other.makes(
        "machines",
        Map.of(
            "name", "Loft diode",
            "source", "diode",
            "wavelength", "455 nm",
            "ratedPower", "10 W",
            "motion", "gantry"));
    Document form = browser.get(page.selectFirst(".hit .hit-keep").attr("href")).page();
    assertEquals("400", form.selectFirst("[name=settings.speed]").val());
  }

  @Test
  void theOrderIsChosenInPlace() {
    Document page = new Browser().get("/?sort=dose&q=" + LOT).page();
    assertEquals("dose", page.select("#sort option[selected]").val());
    // 5 W over 400 mm/s and 0.1 mm is the least
    assertTrue(page.select(".hit").first().text().contains("400 mm/s"));
    assertTrue(page.title().startsWith("“" + LOT + "”"), page.title());
  }
}
