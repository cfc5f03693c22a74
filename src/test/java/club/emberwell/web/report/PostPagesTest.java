package club.emberwell.web.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.web.frame.Browser;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@QuarkusTest
class PostPagesTest {
  private static final String FORM = "form.post-form";

  private static Browser atTheForm(Person person) {
    Browser browser = Browser.of(person);
    browser
        .get("/bench/machines/new")
        .send(
            "main form",
            Map.of(
                "name", "Shed diode",
                "source", "diode",
                "wavelength", "455 nm",
                "ratedPower", "10 W",
                "motion", "gantry"));
    assertEquals(303, browser.status());
    return browser.get("/post").tidy();
  }

  private static Map<String, String> result() {
    Map<String, String> fields = new HashMap<>();
    fields.put("material", "stainless tumbler");
    fields.put("coating", "powder coated");
    fields.put("colour", "navy");
    fields.put("process", "coating-removal");
    fields.put("settings.power", "80 %");
    fields.put("settings.speed", "1 in/s");
    fields.put("settings.lineSpacing", "254 dpi");
    fields.put("effect", "right");
    fields.put("quality", "4");
    fields.put("notes", "Wiped with a damp cloth.");
    return fields;
  }

  private static long posted(Person person) {
    return ((Number)
            person
                .asks()
                .get("/api/v1/reports?member=" + person.handle())
                .then()
                .statusCode(200)
                .extract()
                .path("total"))
        .longValue();
  }

  @Test
  void aResultIsPostedFoundAndCountedAtOnce() {
    Person person = People.join();
    Browser browser = atTheForm(person).send(FORM, result());
    assertEquals(303, browser.status());
    browser.follow().tidy();
    String text = browser.page().text();
    assertTrue(text.contains("1 in/s"), "as written");
    assertTrue(text.contains("25.4 mm/s"), "as understood");
    assertTrue(text.contains("3.15 J/mm²"), "8 W / (25.4 mm/s x 0.1 mm)");
    assertEquals(1, posted(person));

    browser.get("/?member=" + person.handle() + "&coating=powder-coat").tidy();
    assertTrue(browser.page().select(".found-line").text().startsWith("1 report with 1 trial"));
    assertTrue(browser.page().select(".answer").text().contains("one member 1 member, 1 test"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      nullValues = "nothing",
      value = {
        "material | ''",
        "process | drilling",
        "settings.power | 5 mm",
        "settings.power | -5 W",
        "settings.power | 8",
        "settings.power | 140 %",
        "settings.speed | ''",
        "settings.speed | 600 mm/m",
        "settings.speed | 1,000 mm/min",
        "settings.speed | fast",
        "settings.lineSpacing | 5 W",
        "settings.lineSpacing | 0 mm",
        "settings.passes | two",
        "settings.passes | 0",
        "settings.repetitionRate | 30 mm",
        "settings.pulseDuration | 200",
        "settings.focusOffset | 2 kHz",
        "thickness | 3 kg",
        "effect | splendid",
        "quality | 9",
        "machine | not-an-id",
      })
  void aFieldAtFaultIsToldBesideItAndNothingTypedIsLost(String field, String value) {
    Person person = People.join();
    Map<String, String> fields = result();
    fields.put(field, value);
    Browser browser = atTheForm(person).send(FORM, fields);
    assertEquals(422, browser.status());
    browser.tidy();
    Document page = browser.page();
    assertTrue(page.title().startsWith("Error:"), page.title());
    assertTrue(
        !page.select("[id=at-" + field + "] .field-error").isEmpty(), "no error beside " + field);
    assertNotNull(page.selectFirst("#error-summary a[href=#" + field + "]"));
    fields.forEach(
        (name, typed) -> {
          if (!name.equals("process")
              && !name.equals("effect")
              && !name.equals("quality")
              && !name.equals("machine")) {
            assertEquals(typed, browser.field(name), name + " was lost");
          }
        });
    assertEquals(0, posted(person));
  }

  @Test
  void anOfferedReadingGoesIntoItsFieldAndStoresNothing() {
    Person person = People.join();
    Map<String, String> fields = result();
    fields.put("settings.speed", "1,000 mm/min");
    Browser browser = atTheForm(person).send(FORM, fields);
    String reading =
        browser.page().select("button[name=use:settings.speed]").eachAttr("value").stream()
            .filter(r -> r.startsWith("1000"))
            .findFirst()
            .orElseThrow();
    browser.send(FORM, Map.of(), Map.of("use:settings.speed", reading));
    assertEquals(200, browser.status());
    assertEquals(reading, browser.field("settings.speed"));
    assertEquals("navy", browser.field("colour"));
    assertEquals(0, posted(person));
  }

  @Test
  void anImplausibleValueIsAskedAboutAndStoredOnceConfirmed() {
    Person person = People.join();
    Map<String, String> fields = result();
    fields.put("settings.speed", "3000 mm/s");
    Browser browser = atTheForm(person).send(FORM, fields);
    assertEquals(422, browser.status());
    assertTrue(browser.page().text().contains("Please check"));
    assertEquals(0, posted(person));
    assertTrue(!browser.page().select("input[name=confirmed]").isEmpty());
    browser.send(FORM, Map.of());
    assertEquals(303, browser.status());
    assertEquals(1, posted(person));
  }

  @Test
  void aProhibitedMaterialTakesNoSettingsAndSaysWhy() {
    Person person = People.join();
    Map<String, String> fields = result();
    fields.put("material", "PVC sheet");
    Browser browser = atTheForm(person).send(FORM, fields);
    assertEquals(422, browser.status());
    String text = browser.page().select(".box-danger").text();
    assertTrue(text.contains("hydrogen chloride"), text);
    assertTrue(text.contains("Source:"), text);
    assertEquals("80 %", browser.field("settings.power"));
    assertEquals(0, posted(person));
  }

  @Test
  void whatOnePostedLastIsTheStartOfTheNextWithoutItsJudgement() {
    Person person = People.join();
    Browser browser = atTheForm(person).send(FORM, result()).get("/post");
    assertEquals("1", browser.field("settings.speed"));
    assertEquals("in/s", unitOn(browser, "settings.speed"), "as it was typed the last time");
    assertTrue(browser.page().select("[name=effect][checked]").isEmpty());
    assertEquals("", browser.field("notes"));
  }

  private static String unitOn(Browser browser, String field) {
    return browser.page().select("[name='unit." + field + "'][checked]").val();
  }

  private static JsonPath stored(Person person, Browser browser) {
    assertEquals(303, browser.status(), browser.page().select(".error-summary").text());
    String id = browser.location().replaceAll("^/reports/|\\?.*$", "");
    return person.asks().get("/api/v1/reports/" + id).jsonPath();
  }

  @Test
  void aNumberWithoutAUnitIsInTheOneThatIsOnBesideIt() {
    Person person = People.join();
    Map<String, String> fields = result();
    fields.putAll(Map.of("settings.speed", "600", "unit.settings.speed", "mm/min"));
    fields.putAll(Map.of("settings.lineSpacing", "0.1 mm", "unit.settings.lineSpacing", "dpi"));
    JsonPath report = stored(person, atTheForm(person).send(FORM, fields));
    assertEquals("600 mm/min", report.get("settings.speed.written"));
    assertEquals("0.1 mm", report.get("settings.lineSpacing.written"), "what is typed counts");
  }

  @Test
  void theUnitAMemberSaidIsOnAndNothingIsAskedThen() {
    Person person = People.join();
    Browser browser = atTheForm(person);
    assertEquals("", unitOn(browser, "settings.speed"), "nobody said one");
    browser.get("/me").send("form[action$=preferences]", Map.of("units.SPEED", "mm/min"));
    browser.get("/post").tidy();
    assertEquals("mm/min", unitOn(browser, "settings.speed"));
    Map<String, String> fields = result();
    fields.put("settings.speed", "600");
    assertEquals(
        "600 mm/min", stored(person, browser.send(FORM, fields)).get("settings.speed.written"));
  }

  @Test
  void onlyReadingsThatTheMachineCanBeToldAreOfferedAndOneIsTaken() {
    Person person = People.join();
    Map<String, String> fields = result();
    fields.put("settings.power", "8");
    fields.put("settings.speed", "600");
    Browser browser = atTheForm(person).send(FORM, fields);
    assertEquals(422, browser.status());
    Document page = browser.tidy().page();
    assertEquals(
        List.of("8 %", "8 W"), page.select("[name='use:settings.power']").eachAttr("value"));
    assertEquals(
        List.of("600 mm/s", "600 mm/min", "600 in/min"),
        page.select("[name='use:settings.speed']").eachAttr("value"),
        "a gantry runs no 600 in/s");
    assertEquals("settings.power", page.selectFirst("[autofocus]").id(), "the cursor is there");
    JsonPath report =
        stored(
            person, browser.send(FORM, Map.of("settings.power", "45", "settings.speed", "6000")));
    assertEquals(45, report.getDouble("settings.powerPercent.value"), "no other is possible");
    assertEquals(100, report.getDouble("settings.speed.value"), "6000 mm/min");
  }

  @Test
  void afterPostingOneGoesOnFromTheReport() {
    Person person = People.join();
    Browser browser = atTheForm(person);
    Map<String, String> fields = result();
    fields.put("effect", "too-much");
    fields.put("quality", "");
    String report = browser.send(FORM, fields).location().replaceAll("/reports/|\\?.*", "");
    browser.follow().tidy();
    assertEquals("Saved", browser.page().select("#stored").text());
    assertTrue(
        browser.page().select("section[aria-labelledby=cautions] > details").isEmpty(),
        "the first cautions of a material stand open");
    String next = browser.page().selectFirst("a:contains(Post the next one)").attr("href");

    browser.get("/ask/new?report=" + report).tidy();
    assertEquals("stainless tumbler", browser.field("ties.material"));
    assertEquals("powder coated", browser.field("ties.coating"));
    assertEquals(report, browser.page().select("[name=ties.report]").val());
    assertTrue(browser.field("title").contains("too much"), browser.field("title"));
    assertTrue(browser.field("text").contains("80 % (8 W) · 25.4 mm/s"), browser.field("text"));

    browser.get(next).tidy();
    assertTrue(browser.page().select("details.same summary").text().contains("Shed diode"));
    browser.send(FORM, Map.of("settings.power", "70", "effect", "right")).follow().tidy();
    assertTrue(browser.page().text().contains("70 %"), "the unit is kept");
    assertFalse(
        browser.page().select("section[aria-labelledby=cautions] > details").isEmpty(),
        "read before");
  }

  @Test
  void anEditOfAnOlderVersionShowsBothAndSavesNothing() {
    Person person = People.join();
    Browser first = atTheForm(person).send(FORM, result());
    String report = first.location().replaceAll("\\?.*", "");
    first.get(report + "/edit").tidy();
    Browser second = Browser.of(person).get(report + "/edit");
    second.send(FORM, Map.of("settings.power", "70 %"));
    assertEquals(303, second.status());
    first.send(FORM, Map.of("settings.power", "60 %"));
    assertEquals(412, first.status());
    String both = first.page().select("[role=alert] tbody").text();
    assertTrue(both.contains("70 %") && both.contains("60 %"), both);
    assertEquals("60 %", first.field("settings.power"));
    assertTrue(first.page().text().contains("changed this report in the meantime"));
    second.get(report + "/history").tidy();
    assertTrue(second.page().select("del").text().contains("80 %"));
    assertTrue(second.page().select("ins").text().contains("70 %"));
  }

  @Test
  void aWithdrawnReportIsGoneForOthersAndCountsNowhere() {
    Person person = People.join();
    Browser browser = atTheForm(person).send(FORM, result());
    String report = browser.location().replaceAll("\\?.*", "");
    browser.get(report + "/withdraw").tidy().send("main form", Map.of());
    assertEquals(303, browser.status());
    browser.follow();
    assertTrue(browser.page().text().contains("Withdrawn by its author"));
    Browser other = Browser.of(People.join()).get(report);
    assertEquals(410, other.status());
    other.tidy();
    assertEquals(0, posted(person));
  }

  @Test
  void somebodyElseMayRepeatButNotEdit() {
    Person person = People.join();
    Browser browser = atTheForm(person).send(FORM, result());
    String report = browser.location().replaceAll("\\?.*", "");
    Person other = People.join();
    Browser theirs = atTheForm(other).get(report);
    Element tried = theirs.page().selectFirst("a[href$=/repeat]");
    assertEquals("I tried this", tried.text());
    theirs.get(tried.attr("href")).tidy();
    assertEquals("I tried this", theirs.page().selectFirst("h1").text());
    assertFalse(theirs.page().select("[name=machine][checked]").isEmpty(), "the machine is known");
    theirs.send(FORM, Map.of());
    assertEquals(422, theirs.status());
    theirs.send(FORM, Map.of("effect", "too-much"));
    assertEquals(303, theirs.status());
    browser.get(report);
    assertTrue(browser.page().text().contains("Tried by one other: 1 too much."));
    assertTrue(
        browser
            .page()
            .select("#repeats + ul, section[aria-labelledby=repeats]")
            .text()
            .contains(other.handle()));
    theirs.get(report + "/edit").send(FORM, Map.of("settings.power", "1 %"));
    assertEquals(403, theirs.status());
  }

  @Test
  void whatIsNotThereIsToldPlainly() {
    Browser browser = Browser.of(People.join()).get("/reports/" + UUID.randomUUID()).tidy();
    assertEquals(404, browser.status());
  }
}
