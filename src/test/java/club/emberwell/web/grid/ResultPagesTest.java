package club.emberwell.web.grid;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.grid.PlannedGrids;
import club.emberwell.grid.photo.DrawnGrid;
import club.emberwell.grid.photo.PhotoPlan;
import club.emberwell.web.frame.Browser;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Judging a grid of two rows and three columns, and its photo, without scripts. */
@QuarkusTest
class ResultPagesTest {
  private static final String FORM = "form.judging";

  @Inject PlannedGrids grids;

  private Person ada;
  private String path;
  private Browser browser;

  @BeforeEach
  void open() {
    ada = People.join();
    path = "/grids/" + grids.plan(ada, 3);
    browser = Browser.of(ada);
  }

  private static Map<String, String> judged() {
    Map<String, String> fields = new HashMap<>();
    fields.put("effects.0.0", "too-much");
    fields.put("effects.0.1", "right");
    fields.put("effects.1.1", "right");
    fields.put("effects.1.2", "too-little");
    fields.put("best", "0.1");
    fields.put("quality.1.1", "3");
    fields.put("defects.0.0", "halo");
    fields.put("notes", "Wiped with oil.");
    return fields;
  }

  @Test
  void aGridIsJudgedByPlainFieldsAndBecomesAReport() {
    browser.get(path + "/results").tidy();
    Document page = browser.page();
    assertTrue(page.select("label").eachText().contains("20 mm/s, 40 %, 2 J/mm²" + options(page)));
    assertTrue(page.select(".judge-bar").text().contains("0 of 6 judged"));
    browser.send(FORM, judged());
    assertEquals(303, browser.status(), browser.page().select(".error-summary").text());
    String report = browser.location();
    browser.follow().tidy();
    Document shown = browser.page();
    assertEquals(
        "● Right, best, 20 mm/s, column 2 2 J/mm² quality 5 of 5", read(shown, "td.cell-best"));
    assertEquals("△ Too much, 20 mm/s, column 1 1.5 J/mm² Halo", read(shown, "td.cell-too-much"));
    assertEquals(2, shown.select("td.cell-none").size());
    assertTrue(shown.text().contains("The same in all tests: 0.1 mm"));
    assertTrue(shown.text().contains("Wiped with oil."));
    assertFalse(shown.select("a[href='" + path + "']").isEmpty(), "back to the grid");
    browser.get("/?member=" + ada.handle()).tidy();
    assertTrue(browser.page().select(".hit").text().contains("Test grid, 4 tests"));

    browser.get(path + "/results").tidy();
    assertEquals("right", browser.field("effects.1.1"));
    assertEquals("0.1", browser.field("best"));
    assertEquals("Halo", browser.field("defects.0.0"));
    browser.send(FORM, Map.of("effects.0.2", "too-much"));
    assertEquals(report.replace("?saved", ""), browser.location().replace("?saved", ""));
    assertEquals(
        1,
        (int) given().get("/api/v1/reports?member=" + ada.handle()).then().extract().path("total"));
  }

  /** A cell as it is read, without where it leads. */
  private static String read(Document page, String cell) {
    return page.select(cell).text().replace("I tried this: ", "");
  }

  private static String options(Document page) {
    Element any = page.selectFirst("select[name=effects.0.1]");
    return any == null ? "" : " " + any.text();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          best        | 1.2          | The best test must be right.
          effects.0.0 | splendid     | Choose one of
          defects.0.0 | halo, gloom  | Choose from
          quality.1.2 | 3            | Give a quality only if the result was right.
          quality.0.0 | x            | A whole number
          quality.1.1 | 5            | same quality or a higher one
          """)
  void whatIsWrongIsToldAndNothingJudgedIsLost(String field, String value, String said) {
    Map<String, String> fields = judged();
    fields.put(field, value);
    browser.get(path + "/results").send(FORM, fields);
    assertEquals(422, browser.status());
    browser.tidy();
    Document page = browser.page();
    assertTrue(page.select(".error-summary").text().contains(said), page.text());
    if (!field.equals("quality.1.1")) {
      Element at = page.getElementById(field);
      Element box = at.closest("td, .field");
      assertFalse(box.select(".field-error").isEmpty(), "no error beside " + field);
    }
    assertEquals("right", browser.field("effects.0.1"));
    assertEquals("Wiped with oil.", page.getElementById("notes").text());
    assertEquals(0, total());
  }

  private int total() {
    return given().get("/api/v1/reports?member=" + ada.handle()).then().extract().path("total");
  }

  @Test
  void editingTheReportOfAGridKeepsItsTests() {
    String machine =
        ada.makes(
            "machines",
            Map.of(
                "name", "Shed diode",
                "source", "diode",
                "wavelength", "455 nm",
                "ratedPower", "10 W",
                "motion", "gantry"));
    List<Map<String, Object>> trials = new ArrayList<>();
    for (int column = 0; column < 3; column++) {
      Map<String, Object> settings =
          Map.of("power", 30 + 10 * column + " %", "speed", "20 mm/s", "lineSpacing", "0.1 mm");
      trials.add(Map.of("row", 0, "column", column, "settings", settings, "effect", "right"));
    }
    String report =
        ada.makes(
            "reports",
            Map.of(
                "machine",
                machine,
                "material",
                "slate",
                "process",
                "surface-engraving",
                "trials",
                trials));
    browser.get("/reports/" + report + "/edit").tidy();
    assertTrue(browser.page().select("[name=effect]").isEmpty());
    browser.send("form.post-form", Map.of("notes", "Cut from one tile."));
    assertEquals(303, browser.status(), browser.page().select(".error-summary").text());
    given()
        .get("/api/v1/reports/" + report)
        .then()
        .body("notes", equalTo("Cut from one tile."))
        .body("trials.size()", equalTo(3));
  }

  @Test
  void whoeverWasFasterIsShownBesideOnesOwn() {
    browser.get(path + "/results");
    Browser other = Browser.of(ada).get(path + "/results");
    other.send(FORM, Map.of("effects.0.0", "right"));
    assertEquals(303, other.status());
    browser.send(FORM, judged());
    assertEquals(412, browser.status());
    browser.tidy();
    assertTrue(
        browser
            .page()
            .select("table tr")
            .eachText()
            .contains("20 mm/s, 30 %, 1.5 J/mm² Right Too much"));
    browser.send(FORM, Map.of());
    assertEquals(303, browser.status());
    assertEquals(1, total());
  }

  @Test
  void aGridThatWasWithdrawnMeanwhileKeepsWhatWasTyped() {
    browser.get(path + "/results");
    grids.withdraw(ada, path.substring("/grids/".length()));
    browser.send(FORM, judged());
    assertEquals(422, browser.status());
    assertTrue(browser.page().text().contains("You have withdrawn this grid"));
    assertEquals("right", browser.field("effects.0.1"));
    browser.get(path + "/results");
    assertEquals(404, browser.status());
  }

  @Test
  void aPhotoIsCutIntoTestsByCornersGivenAsNumbers() {
    browser.get(path + "/photo").tidy();
    given()
        .cookies(browser.cookies())
        .redirects()
        .follow(false)
        .multiPart("form-token", token())
        .multiPart("photo", "grid.png", DrawnGrid.png(new PhotoPlan(2, 3, 8, 2)), "image/png")
        .post(path + "/photo")
        .then()
        .statusCode(303);
    browser.get(path + "/photo").tidy();
    assertTrue(browser.page().select("#seen").isEmpty());
    browser.send("form.corners", Map.of("topLeft.x", "far"));
    assertEquals(422, browser.status());
    assertEquals("far", browser.field("topLeft.x"));
    browser.send("form.corners", Map.of("topLeft.x", "90", "topRight.x", "10"));
    assertEquals(422, browser.status());
    assertEquals("90", browser.field("topLeft.x"));
    browser.send("form.corners", slanted());
    assertEquals(303, browser.status(), browser.page().select(".error-summary").text());
    browser.follow().tidy();
    Document page = browser.page();
    assertEquals(6, page.select(".seen-table tbody tr").size());
    assertEquals(6, page.select(".dose-plot a").size());
    assertTrue(page.select(".seen-table").text().contains("20 mm/s, 30 %, 1.5 J/mm²"));
    browser.get(page.selectFirst("svg.crop image").attr("href"));
    assertEquals(200, browser.status());
    assertEquals("image/jpeg", browser.header("Content-Type"));

    browser.get(path + "/results");
    Map<String, String> fields = judged();
    fields.put("showPhoto", "true");
    browser.send(FORM, fields).follow();
    assertEquals(1, browser.page().select(".photos li").size());
    browser.get(path + "/photo").send("form[action$=remove]", Map.of());
    assertEquals(404, browser.get(path + "/photo.jpg").status());
  }

  private String token() {
    return browser.page().select("main input[name=form-token]").attr("value");
  }

  private static Map<String, String> slanted() {
    return Map.of(
        "topLeft.x", "22",
        "topLeft.y", "18",
        "topRight.x", "83",
        "topRight.y", "11",
        "bottomRight.x", "91",
        "bottomRight.y", "86",
        "bottomLeft.x", "12",
        "bottomLeft.y", "74,0");
  }
}
