package club.emberwell.web.grid;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.launch.StatementCount;
import club.emberwell.web.frame.Browser;
import io.quarkus.test.junit.QuarkusTest;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;

/** Six members were right on basswood with a 10 W diode at 0.6 to 2.4 J/mm². */
@QuarkusTest
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class GridPagesTest {
  private static final int MOST_STATEMENTS = 8;

  private boolean posted;
  private Person ada;
  private String machine;
  private Browser browser;

  @BeforeEach
  void begin() {
    if (!posted) {
      posted = true;
      for (int member = 1; member <= 6; member++) {
        post(People.join(), 50 / (0.3 * member + 0.3));
      }
    }
    ada = People.join();
    machine = machine(ada);
    browser = Browser.of(ada);
  }

  private static Map<String, Object> laser() {
    return new HashMap<>(
        Map.of(
            "source", "diode",
            "wavelength", "455 nm",
            "ratedPower", "10 W",
            "motion", "gantry",
            "beamDiameter", "80 um"));
  }

  private static void post(Person person, double speed) {
    Map<String, Object> report = new HashMap<>();
    report.put("laser", laser());
    report.put("material", "basswood");
    report.put("process", "surface-engraving");
    report.put(
        "settings",
        Map.of("power", "50 %", "speed", Math.round(speed) + " mm/s", "lineSpacing", "0.1 mm"));
    report.put("effect", "right");
    sent(person, report, "reports");
  }

  private static String sent(Person person, Object body, String where) {
    return person
        .asks()
        .header("Idempotency-Key", UUID.randomUUID().toString())
        .body(body)
        .post("/api/v1/" + where)
        .then()
        .statusCode(201)
        .extract()
        .path("id");
  }

  private static String machine(Person person) {
    Map<String, Object> machine = laser();
    machine.put("name", "Desk diode");
    machine.put("maxSpeed", "100 mm/s");
    return sent(person, machine, "machines");
  }

  private String address(String... more) {
    StringBuilder address =
        new StringBuilder("/grids/plan?machine=" + machine)
            .append("&process=surface-engraving&material=basswood");
    for (int i = 0; i < more.length; i += 2) {
      address
          .append('&')
          .append(more[i])
          .append('=')
          .append(URLEncoder.encode(more[i + 1], StandardCharsets.UTF_8));
    }
    return address.toString();
  }

  @Test
  void theAnswerPanelLeadsToAPlanForItsMachineAndWork() {
    Document find =
        browser.get("/?material=basswood&process=surface-engraving&near=" + machine).tidy().page();
    Element link = find.selectFirst(".answer a[href^=/grids/plan]");
    assertNotNull(link, find.select(".answer").text());
    Document plan = browser.get(link.attr("href")).tidy().page();
    assertEquals(200, browser.status());
    assertTrue(plan.select(".plan").text().contains("Desk diode"), plan.text());
  }

  @Test
  void aPlanStandsInItsAddressAndEveryCellHasASentence() {
    Document page = browser.get(address()).tidy().page();
    assertEquals(200, browser.status());
    String said = page.select(".plan > p").text();
    assertTrue(said.matches(".*\\d+ tests on one blank, \\d+ x \\d+ mm, about .*"), said);
    assertTrue(said.contains("Covers "), said);
    assertTrue(said.contains("chance your best is inside"), said);
    assertFalse(page.select(".planned td.cell").isEmpty());
    for (Element cell : page.select(".planned td.cell .visually-hidden")) {
      assertTrue(cell.text().matches(".* mm/s, .* %: .* J/mm².*\\."), cell.text());
    }
    assertEquals(machine, page.select("select[name=machine] option[selected]").attr("value"));
  }

  @Test
  void fewerAndMoreTestsAreLinks() {
    Document page = browser.get(address()).page();
    int usual = page.select(".planned td.cell").size();
    Document fewer =
        browser.get(page.selectFirst("a:containsOwn(Fewer tests)").attr("href")).tidy().page();
    Document more =
        browser.get(page.selectFirst("a:containsOwn(More tests)").attr("href")).tidy().page();
    assertTrue(fewer.select(".planned td.cell").size() < usual);
    assertTrue(more.select(".planned td.cell").size() > usual);
  }

  @Test
  void axesByHandAreReadInOneLineAndWhatTheMachineCannotDoIsDashed() {
    Document page =
        browser
            .get(
                address(
                    "axes.across.setting", "power",
                    "axes.across.values", "40; 60 %",
                    "axes.down.setting", "speed",
                    "axes.down.values", "50 to 150 mm/s in 3"))
            .tidy()
            .page();
    assertEquals(6, page.select(".planned td.cell").size(), page.text());
    assertEquals(2, page.select(".planned td.plan-out").size());
    String name = page.select(".planned td.plan-out .visually-hidden").get(0).text();
    assertTrue(name.contains("left out. 150 mm/s is more than the machine's highest speed"), name);
    assertTrue(page.select("a:containsOwn(Fewer tests)").isEmpty());
  }

  @Test
  void whatIsWrongStandsAtItsFieldAndNothingTypedIsLost() {
    browser.get(
        address(
            "axes.across.setting", "power",
            "axes.across.values", "40; 40 %",
            "axes.down.setting", "power",
            "settings.lineSpacing", "junk",
            "blank.cell", "0.1 mm",
            "settings.passes", "two"));
    assertEquals(422, browser.status());
    Document page = browser.page();
    assertEquals("40; 40 %", page.getElementById("axes.across.values").val());
    assertEquals("two", page.getElementById("settings.passes").val());
    assertTrue(page.select("#error-summary").text().contains("whole number"), page.text());
    browser.get(
        address(
            "axes.across.setting", "power",
            "axes.across.values", "40; 40 %",
            "axes.down.setting", "power",
            "settings.lineSpacing", "junk",
            "blank.cell", "0.1 mm"));
    page = browser.tidy().page();
    assertEquals(422, browser.status());
    assertTrue(page.getElementById("at-axes.across.values").hasClass("has-error"));
    assertTrue(page.getElementById("at-axes.down.setting").hasClass("has-error"));
    assertTrue(page.getElementById("at-blank.cell").hasClass("has-error"));
    assertTrue(page.getElementById("at-settings.lineSpacing").hasClass("has-error"));
    assertTrue(page.select(".plan").isEmpty());
  }

  @Test
  void prohibitedMaterialPlansNothing() {
    Document page =
        browser
            .get("/grids/plan?machine=" + machine + "&process=surface-engraving&material=PVC")
            .page();
    assertEquals(422, browser.status());
    assertTrue(page.select(".box-danger").text().contains("We do not share settings"), page.text());
    assertTrue(page.select(".planned").isEmpty());
  }

  @Test
  void withoutAnythingSaidTheFormStandsThere() {
    Document page = browser.get("/grids/plan").tidy().page();
    assertEquals(200, browser.status());
    assertNotNull(page.selectFirst("form#by-hand button.primary"));
    Person newcomer = People.join();
    Document first = Browser.of(newcomer).get("/grids/plan").tidy().page();
    assertNotNull(first.selectFirst("a[href=/bench/machines/new]"));
  }

  @Test
  void aPlanIsSavedAsItWasSeenPrintedListedEditedAndRemoved() {
    Document plan = browser.get(address("name", "Basswood, first")).page();
    List<String> seen = plan.select(".planned td.cell").eachText();
    browser.send(".plan form", Map.of());
    assertEquals(303, browser.status(), browser.page().text());
    String sheet = browser.location();
    Document printed = browser.follow().tidy().page();
    assertEquals(seen, printed.select(".planned td.cell").eachText());
    assertNotNull(printed.selectFirst(".sheet-tag svg path"));
    assertTrue(printed.select(".sheet").text().contains("455 nm"), printed.text());
    String grid = sheet.replaceFirst("/sheet.*", "");
    assertEquals(200, browser.get(grid + "/sheet.svg").status());
    assertEquals(200, browser.get(grid + "/sheet.csv").status());
    Document one = browser.get(grid).tidy().page();
    assertEquals("Basswood, first", one.selectFirst("h1").text());
    assertEquals(seen, one.select(".planned td.cell").eachText());
    Document list = browser.get("/grids").tidy().page();
    assertEquals(grid, list.select(".hit h2 a").attr("href"));
    browser.get(grid + "/edit").tidy();
    browser.send("main form", Map.of("name", "Basswood, second", "blank.cell", "5 mm"));
    assertEquals(303, browser.status(), browser.page().text());
    assertEquals("Basswood, second", browser.follow().page().selectFirst("h1").text());
    assertEquals(seen, browser.page().select(".planned td.cell").eachText());
    browser.get(grid + "/withdraw").tidy();
    browser.send("main form", Map.of());
    assertEquals(303, browser.status());
    assertEquals(404, browser.get(grid).status());
  }

  @Test
  void aWrongEditLosesNothingAndAnOldOneShowsBoth() {
    browser.get(address()).send(".plan form", Map.of());
    String grid = browser.location().replaceFirst("/sheet.*", "");
    browser.get(grid + "/edit");
    browser.send("main form", Map.of("axes.across.values", "10; 10 %"));
    assertEquals(422, browser.status());
    assertEquals("10; 10 %", browser.page().getElementById("axes.across.values").val());
    browser.get(grid + "/edit");
    Browser other = Browser.of(ada);
    other.get(grid + "/edit");
    other.send("main form", Map.of("name", "Other"));
    assertEquals(303, other.status());
    browser.send("main form", Map.of("name", "Mine"));
    assertEquals(412, browser.status());
    assertTrue(browser.page().select("#meanwhile").text().contains("grid"), browser.page().text());
  }

  @Test
  void aPageCostsFewStatements() {
    browser.get(address()).send(".plan form", Map.of());
    String grid = browser.location().replaceFirst("/sheet.*", "");
    Map<String, Integer> counted = new HashMap<>();
    for (String path : List.of(address(), grid, grid + "/sheet", "/grids", grid + "/edit")) {
      int least = Integer.MAX_VALUE;
      for (int i = 0; i < 3; i++) {
        List<String> seen =
            StatementCount.ofRequests(() -> assertEquals(200, browser.get(path).status()));
        least = Math.min(least, seen.size());
      }
      counted.put(path.replaceFirst("\\?.*", ""), least);
    }
    counted.values().forEach(count -> assertTrue(count <= MOST_STATEMENTS, counted.toString()));
  }
}
