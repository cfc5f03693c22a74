package club.emberwell.web.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.launch.StatementCount;
import club.emberwell.report.ReportLimits;
import club.emberwell.web.frame.Browser;
import io.quarkus.test.junit.QuarkusTest;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;

@QuarkusTest
class BenchPagesTest {
  private static String post(Person person, int speed) {
    Map<String, Object> laser =
        Map.of("source", "co2", "wavelength", "10.6 um", "ratedPower", "40 W", "motion", "gantry");
    Map<String, Object> settings =
        Map.of("power", "100 %", "speed", speed + " mm/s", "lineSpacing", "0.1 mm");
    Map<String, Object> report =
        Map.of(
            "laser", laser,
            "material", "birch plywood",
            "process", "surface-engraving",
            "settings", settings,
            "effect", "right");
    return person
        .asks()
        .header("Idempotency-Key", UUID.randomUUID().toString())
        .body(report)
        .post("/api/v1/reports")
        .then()
        .statusCode(201)
        .extract()
        .path("id");
  }

  @Test
  void ownReportsStandThereInEveryState() {
    Person person = People.join();
    String kept = post(person, 300);
    String withdrawn = post(person, 310);
    person.asks().delete("/api/v1/reports/" + withdrawn).then().statusCode(204);
    Browser browser = Browser.of(person).get("/bench").tidy();
    assertEquals(200, browser.status());
    var page = browser.page();
    assertEquals(2, page.select(".hit").size());
    assertEquals(
        "/reports/" + withdrawn, page.select(".hit th a[href^=/reports/]").get(0).attr("href"));
    assertTrue(page.select(".hit").get(0).text().contains("withdrawn by you"));
    assertEquals("/reports/" + kept, page.select(".hit th a[href^=/reports/]").get(1).attr("href"));
    assertNull(page.select(".hit").get(1).selectFirst(".state"));
  }

  @Test
  void ownReportsAreSearchedByWordsAndFilters() {
    Person person = People.join();
    String birch = post(person, 300);
    post(person, 310);
    Browser browser = Browser.of(person).get("/bench").tidy();
    var page = browser.page();
    assertEquals(
        List.of("q", "material", "process", "effect", "machineName"),
        page.select(".own-filter [name]").eachAttr("name"));
    assertEquals(
        "Birch plywood (2)", page.select("#own-material option[value=birch-plywood]").text());
    browser.get("/bench?q=birch&material=birch-plywood&process=&effect=right").tidy();
    assertEquals(2, browser.page().select(".hit").size());
    assertEquals("birch", browser.page().select("#q").attr("value"));
    browser.get("/bench?effect=too-much").tidy();
    assertEquals(0, browser.page().select(".hit").size());
    assertTrue(browser.page().text().contains("None of your results fits"));
    browser.get("/bench?sort=dose").tidy();
    assertEquals(
        "/reports/" + birch,
        browser.page().select(".hit th a[href^=/reports/]").last().attr("href"));
    assertEquals("ascending", browser.page().select("th[aria-sort]").attr("aria-sort"));
    browser.get("/bench?speedMin=lots");
    assertEquals(200, browser.status());
    assertEquals(1, browser.page().select(".box-warn").size());
  }

  @Test
  void aLongListIsPagedAndCostsNoMoreStatementsThanAShortOne() {
    Person few = People.join();
    post(few, 300);
    post(few, 301);
    Person many = People.join();
    for (int i = 0; i < ReportLimits.OWN_PAGE + 1; i++) {
      post(many, 400 + i);
    }
    Browser first = Browser.of(few);
    Browser second = Browser.of(many);
    first.get("/bench");
    assertEquals(statements(first), statements(second));
    var page = second.page();
    assertEquals(ReportLimits.OWN_PAGE, page.select(".hit").size());
    second.get(page.select("a[rel=next]").attr("href").replaceFirst("#.*", "")).tidy();
    assertEquals(1, second.page().select(".hit").size());
    assertNotNull(second.page().selectFirst("a[rel=prev]"));
    assertEquals(200, second.get("/bench?from=junk").status());
    assertEquals(200, second.get("/bench?from=999999").status());
    assertEquals(0, second.page().select(".hit").size());
  }

  /** The least of some looks: one of them may find a copy of the club's settings too old. */
  private static int statements(Browser browser) {
    int least = Integer.MAX_VALUE;
    for (int i = 0; i < 3; i++) {
      List<String> seen =
          StatementCount.ofRequests(() -> assertEquals(200, browser.get("/bench").status()));
      least = Math.min(least, seen.size());
    }
    return least;
  }
}
