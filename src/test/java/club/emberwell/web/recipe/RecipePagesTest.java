package club.emberwell.web.recipe;

import static org.hamcrest.Matchers.containsInAnyOrder;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.web.frame.Browser;
import io.quarkus.test.junit.QuarkusTest;
import java.nio.charset.Charset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Recipes on pages, without scripts: kept, used, changed, brought back, published, read in. */
@QuarkusTest
class RecipePagesTest {
  private static final String FORM = "form.post-form";

  private Person ada;
  private Browser browser;
  private String machine;

  @BeforeEach
  void signIn() {
    ada = People.join();
    machine = tube(ada);
    browser = Browser.of(ada);
  }

  private static String tube(Person owner) {
    return owner.makes(
        "machines",
        Map.of(
            "name", "Long tube",
            "source", "co2",
            "wavelength", "10.6 um",
            "ratedPower", "40 W",
            "motion", "gantry"));
  }

  private static Map<String, String> fields() {
    Map<String, String> fields = new HashMap<>();
    fields.put("name", "Coasters");
    fields.put("folder", "Fair");
    fields.put("material", "maple");
    fields.put("process", "surface-engraving");
    fields.put("settings.power", "60 %");
    fields.put("settings.speed", "400 mm/s");
    fields.put("settings.lineSpacing", "0.1 mm");
    fields.put("notes", "Mask it first.");
    return fields;
  }

  private String main() {
    return browser.page().selectFirst("main").text();
  }

  /** Keeps one by the form and is on its page. */
  private String kept() {
    browser.get("/recipes/new").tidy().send(FORM, fields());
    assertEquals(303, browser.status(), () -> main());
    String path = browser.location().replaceAll("\\?.*", "");
    browser.follow().tidy();
    return path;
  }

  private Map<String, Object> report(Person by, String tube) {
    Map<String, Object> report = new HashMap<>();
    report.put("machine", tube);
    report.put("material", "maple");
    report.put("process", "surface-engraving");
    report.put("settings", Map.of("power", "60 %", "speed", "24 m/min", "lineSpacing", "254 dpi"));
    report.put("effect", "right");
    report.put("notes", "Words of " + by.handle());
    return report;
  }

  @Test
  void aRecipeIsKeptSeenUsedAndFound() {
    assertTrue(browser.get("/recipes").tidy().page().text().contains("No recipe yet"));
    String path = kept();
    assertEquals("Coasters", browser.page().selectFirst("h1").text());
    String told = browser.page().selectFirst(".recipe-told").text();
    assertTrue(told.contains("60 %") && told.contains("400 mm/s"), told);
    assertTrue(main().contains("Not used yet") && main().contains("Mask it first."), main());
    assertNotNull(browser.page().selectFirst("#cautions"), "the cautions of maple");
    browser.send("form[action$=/uses]", Map.of()).follow().tidy();
    assertTrue(main().contains("Last used"), main());
    for (String found : List.of("/recipes", "/recipes?q=maple+mask", "/recipes?folder=Fair")) {
      Element link = browser.get(found).tidy().page().selectFirst("main a[href=" + path + "]");
      assertNotNull(link, found);
    }
    assertTrue(main().contains("Last used today"), main());
    browser.get("/recipes?q=oak").tidy();
    assertTrue(main().contains("No recipe of yours fits."), main());
    assertEquals(422, browser.get("/recipes?q=" + "x".repeat(201)).status());
    browser.get("/bench").tidy();
    assertNotNull(browser.page().selectFirst("#recipes"), "on the bench");
    assertEquals(404, Browser.of(People.join()).get(path).status());
  }

  @Test
  void whatIsWrongStandsAtItsFieldAndNothingIsLost() {
    Map<String, String> wrong = fields();
    wrong.put("settings.speed", "fast");
    wrong.put("settings.passes", "two");
    wrong.put("material", "");
    browser.get("/recipes/new").send(FORM, wrong);
    assertEquals(422, browser.status());
    for (String field : List.of("settings.speed", "settings.passes", "material")) {
      assertFalse(browser.page().select("[id='at-" + field + "'] .field-error").isEmpty(), field);
    }
    assertEquals("Mask it first.", browser.field("notes"));
    assertEquals("two", browser.field("settings.passes"));
    browser.send(
        FORM, Map.of("material", "PVC", "settings.speed", "400 mm/s", "settings.passes", "2"));
    assertEquals(422, browser.status());
    assertNotNull(browser.page().selectFirst("main .box-danger"), "prohibited");
    browser.send(FORM, Map.of("material", "maple", "settings.speed", "90000 mm/s"));
    assertEquals(422, browser.status());
    assertTrue(main().contains("Please check"), main());
    browser.send(FORM, Map.of());
    assertEquals(303, browser.status(), "sent as it is");
  }

  @Test
  void aChangeNeedsAReasonAndAnyRevisionIsComparedAndRestored() {
    String path = kept();
    browser.get(path + "/edit").tidy();
    assertEquals("60", browser.field("settings.power"));
    browser.send(FORM, Map.of("settings.power", "70 %"));
    assertEquals(422, browser.status());
    assertFalse(browser.page().select("#at-reason .field-error").isEmpty());
    browser.send(FORM, Map.of("settings.power", "70 %", "reason", "Too pale."));
    assertEquals(303, browser.status());
    browser.get(path + "/revisions").tidy();
    assertTrue(main().contains("Too pale."), main());
    browser.get(path + "/revisions/1").tidy();
    assertTrue(browser.page().selectFirst(".recipe-told").text().contains("60 %"));
    assertEquals("70 %", browser.page().selectFirst("ins").text());
    browser.send("form[action$=/restore]", Map.of());
    assertEquals(422, browser.status());
    browser.send("form[action$=/restore]", Map.of("reason", "Charred."));
    assertEquals(303, browser.status());
    browser.follow().tidy();
    assertTrue(browser.page().selectFirst(".recipe-told").text().contains("60 %"));
    assertTrue(main().contains("Revision 3"), main());
    assertEquals(404, browser.get(path + "/revisions/9").status());
  }

  @Test
  void whoeverIsSlowerSeesWhatWasSavedMeanwhile() {
    String path = kept();
    browser.get(path + "/edit");
    Browser.of(ada)
        .get(path + "/edit")
        .send(FORM, Map.of("settings.power", "70 %", "reason", "Too pale."));
    browser.send(FORM, Map.of("settings.power", "80 %", "reason", "Darker."));
    assertEquals(412, browser.status());
    assertTrue(browser.page().selectFirst("#meanwhile").text().contains("recipe"));
    browser.send(FORM, Map.of());
    assertEquals(303, browser.status());
  }

  @Test
  void itIsPostedAsAReportInOneStepWithoutItsNotes() {
    String path = kept();
    browser.get(browser.page().selectFirst("a[href^=/post?recipe=]").attr("href")).tidy();
    assertEquals("", browser.field("notes"));
    browser.send(FORM, Map.of("effect", "right", "quality", "4"));
    assertEquals(303, browser.status(), () -> main());
    String report = browser.location().replaceAll("\\?.*", "");
    browser.get(path).tidy();
    assertNotNull(browser.page().selectFirst("#posted ~ ul a[href=" + report + "]"));
    browser.get(report).tidy();
    assertFalse(main().contains("Mask it first."), "its notes stay private");
    assertTrue(main().contains("60 %"), main());
  }

  @Test
  void aReportOfSomebodyElseFillsTheForm() {
    Person eve = People.join();
    String report = eve.makes("reports", report(eve, tube(eve)));
    Element add =
        browser.get("/reports/" + report).tidy().page().selectFirst("a[href^=/recipes/new]");
    assertEquals("Add to my bench", add.text());
    browser.get(add.attr("href")).tidy();
    assertEquals("24 m/min", browser.field("settings.speed"));
    assertEquals("maple", browser.field("material"));
    assertNotNull(
        browser.page().selectFirst("input[name=machine][value=" + machine + "][checked]"));
    browser.send(FORM, Map.of("folder", "From others"));
    assertEquals(303, browser.status(), () -> main());
    String path = browser.location();
    browser.follow().tidy();
    assertNotNull(browser.page().selectFirst("main a[href=/reports/" + report + "]"), "its story");
    eve.asks().delete("/api/v1/reports/" + report).then().statusCode(204);
    assertEquals(200, browser.get(path).status());
  }

  @Test
  void aReportThatGoesWhileTheFormIsOpenHoldsNothingBack() {
    Person eve = People.join();
    String report = eve.makes("reports", report(eve, tube(eve)));
    browser.get("/recipes/new?report=" + report);
    eve.asks().delete("/api/v1/reports/" + report).then().statusCode(204);
    browser.send(FORM, Map.of());
    assertEquals(303, browser.status(), () -> main());
  }

  private String grid() {
    Map<String, Object> grid = new HashMap<>();
    grid.put("machine", machine);
    grid.put("material", "maple");
    grid.put("process", "surface-engraving");
    grid.put("settings", Map.of("lineSpacing", "0.1 mm"));
    grid.put(
        "axes",
        Map.of(
            "across", Map.of("setting", "power", "values", List.of("40 %", "60 %")),
            "down", Map.of("setting", "speed", "values", List.of("200 mm/s", "300 mm/s"))));
    return ada.makes("grids", grid);
  }

  private String judged(String grid, Object results) {
    return ada.asks()
        .header("If-Match", "\"1\"")
        .body(results)
        .put("/api/v1/grids/" + grid + "/results")
        .then()
        .statusCode(200)
        .extract()
        .path("report");
  }

  @Test
  void theBestTestOfAGridAndAnyOfItsReportFillTheForm() {
    String grid = grid();
    List<List<String>> effects =
        List.of(List.of("too-little", "right"), List.of("right", "too-much"));
    judged(grid, Map.of("effects", effects, "best", Map.of("row", 0, "column", 1)));
    browser.get("/grids/" + grid).tidy();
    browser.get(browser.page().selectFirst("a[href^=/recipes/new?grid]").attr("href")).tidy();
    assertEquals("60", browser.field("settings.power"));
    assertEquals("200", browser.field("settings.speed"));
    browser.send(FORM, Map.of());
    assertEquals(303, browser.status(), () -> main());
    browser.follow();
    assertNotNull(browser.page().selectFirst("main a[href=/grids/" + grid + "]"), "its story");
    String report =
        browser.get("/grids/" + grid).page().selectFirst("a[href^=/reports/]").attr("href");
    browser.get(report).tidy();
    assertEquals(4, browser.page().select("#test-to-keep option").size());
    assertEquals("1", browser.page().selectFirst("#test-to-keep option[selected]").val());
    browser.get("/recipes/new?report=" + report.replace("/reports/", "") + "&trial=2").tidy();
    assertEquals("40", browser.field("settings.power"));
    assertEquals("300", browser.field("settings.speed"));
  }

  @Test
  void aGridWithoutABestTestLeadsToItsReportToChoose() {
    String grid = grid();
    judged(grid, Map.of("effects", List.of(List.of("right", "right"), List.of("right", "right"))));
    browser.get("/recipes/new?grid=" + grid);
    assertEquals(303, browser.status());
    assertTrue(browser.location().endsWith("#add-test"), browser.location());
  }

  @Test
  void foldersAreListedAndRenamed() {
    kept();
    browser.get("/recipes/folders").tidy();
    browser.send("main form", Map.of("from", "Fair", "to", ""));
    assertEquals(422, browser.status());
    browser.send("main form", Map.of("from", "Fair", "to", "Markets"));
    assertEquals(303, browser.status());
    browser.get("/recipes?folder=Markets").tidy();
    assertTrue(main().contains("In Markets."), main());
  }

  @Test
  void aRecipeIsRemoved() {
    String path = kept();
    browser.get(path + "/withdraw").tidy().send("main form", Map.of());
    assertEquals(303, browser.status());
    assertEquals(404, browser.get(path).status());
    assertNull(browser.get("/recipes").page().selectFirst("main a[href=" + path + "]"));
  }

  private static final String TABLE =
      """
      Project;Material;Job;Tempo (mm/min);Power;Line spacing;Air assist
      Coasters;maple;surface engraving;24000;60 %;0,1 mm;on
      Signs;birch plywood;surface engraving;fast;50 %;0,1 mm;off
      Cards;PVC;surface engraving;12000;40 %;0,1 mm;off
      """;

  @Test
  void aTableIsReadInByHandMappedColumnsAndWhatDoesNotFitComesBackToBeMended() {
    byte[] older = TABLE.replace("Signs", "Grüße").getBytes(Charset.forName("windows-1252"));
    browser
        .get("/recipes/import")
        .tidy()
        .sendFiles("main form", Map.of("table", ""), Map.of("file", older));
    assertEquals(200, browser.status(), () -> main());
    browser.tidy();
    assertTrue(main().contains("Grüße"), main());
    assertEquals("settings.airAssist", chosen("columns.6.field"));
    assertEquals("material", chosen("columns.1.field"));
    assertEquals("", chosen("columns.3.field"));
    Map<String, String> mapped =
        Map.of(
            "table", TABLE,
            "columns.0.field", "name",
            "columns.2.field", "process",
            "columns.3.field", "settings.speed",
            "columns.3.unit", "mm/min");
    browser.send("main form", mapped, Map.of("step", "look"));
    browser.tidy();
    assertTrue(main().contains("1 of 3 rows fit"), main());
    assertTrue(main().contains("Row 2: Speed: "), main());
    assertTrue(main().contains("Row 3: "), main());
    ada.asks().get("/api/v1/recipes").then().body("items.size()", equalTo(0));
    browser.send("main form", Map.of(), Map.of("step", "store"));
    assertEquals(200, browser.status(), () -> main());
    browser.send("main form", Map.of(), Map.of("step", "store"));
    assertEquals(200, browser.status(), () -> main());
    browser.tidy();
    assertTrue(main().contains("1 recipe on your bench"), main());
    ada.asks()
        .get("/api/v1/recipes")
        .then()
        .body("items.size()", equalTo(1))
        .body("items[0].title", equalTo("Coasters"))
        .body("items[0].settings.speed.value", equalTo(400))
        .body("items[0].settings.airAssist", equalTo(true))
        .body("items[0].written.cameFrom.way", equalTo("table"));
    String mend = browser.sendTo("/recipes/import/refused", "main form", Map.of()).text();
    assertEquals(3, mend.lines().count(), mend);
    assertTrue(mend.startsWith("Project,Material,Job,Tempo (mm/min),"), mend);
    assertTrue(mend.contains("Signs"), mend);
    String mended = mend.replace("fast", "9000").replace("PVC", "cork");
    browser.get("/recipes/import").send("main form", Map.of("table", mended));
    Map<String, String> again = new HashMap<>(mapped);
    again.remove("table");
    browser.send("main form", again, Map.of("step", "store"));
    ada.asks()
        .get("/api/v1/recipes")
        .then()
        .body("items.title", containsInAnyOrder("Coasters", "Signs", "Cards"));
  }

  private String chosen(String field) {
    return browser
        .page()
        .selectFirst("[name='" + field + "'][checked], [name='" + field + "'] option[selected]")
        .val();
  }

  @Test
  void aTableThatIsNoneIsRefusedWhereItWasTyped() {
    browser.get("/recipes/import").send("main form", Map.of("table", ""));
    assertEquals(422, browser.status());
    browser.send("main form", Map.of("table", "only one line"));
    assertEquals(422, browser.status());
    assertFalse(browser.page().select("#at-table .field-error").isEmpty());
    assertEquals("only one line", browser.field("table"));
  }
}
