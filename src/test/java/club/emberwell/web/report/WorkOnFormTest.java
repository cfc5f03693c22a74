package club.emberwell.web.report;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.web.frame.Browser;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import java.util.HashMap;
import java.util.Map;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What keeps works apart is asked for where it matters, and never taken in silence. */
@QuarkusTest
class WorkOnFormTest extends EverywhereCase {
  private static Map<String, String> fields(String process, String material) {
    Map<String, String> fields = new HashMap<>();
    fields.put("settings.power", "50 %");
    fields.put("settings.speed", "400 mm/s");
    fields.put("settings.lineSpacing", "0.1 mm");
    fields.put("material", material);
    fields.put("process", process);
    fields.put("effect", "right");
    return fields;
  }

  private static JsonPath stored(Browser browser) {
    assertEquals(303, browser.status());
    return read(browser.location().replaceAll("^/reports/|\\?.*$", ""));
  }

  @Test
  void aThicknessTypedWithTheMaterialIsShownBackAndConfirmedByOneTap() {
    Browser browser = Browser.of(ada).get("/post").tidy();
    browser.send(FORM, fields("cut", "3mm birch ply"));
    assertEquals(
        "Please check: Thickness 3mm, read out of “3mm birch ply”.",
        browser.page().selectFirst("#at-thickness .field-warning").text());
    assertNotNull(browser.page().selectFirst("#at-thickness button[value=3mm]"), "or said so");
    JsonPath report = stored(browser.send(FORM, Map.of()));
    assertEquals(3, report.getDouble("thickness.value"));
    assertEquals("birch-plywood", report.get("material.value"));

    browser.get("/reports/" + report.get("id") + "/edit");
    assertEquals("3mm", browser.page().selectFirst("[name=thickness]").val());
    stored(browser.send(FORM, Map.of("notes", "Masked.")));
  }

  @Test
  void anotherThicknessThanTheWordsSayCountsOnceItIsMeant() {
    Browser browser = Browser.of(ada).get("/post").tidy();
    Map<String, String> fields = fields("cut", "3mm birch ply");
    fields.put("thickness", "6 mm");
    browser.send(FORM, fields);
    Element warned = browser.page().selectFirst("#at-thickness .field-warning");
    assertTrue(warned.text().contains("The material says 3mm."), warned.text());
    assertEquals(6, stored(browser.send(FORM, Map.of())).getDouble("thickness.value"));
  }

  @ParameterizedTest
  @CsvSource({"cut, thickness", "colour-marking, resultColour"})
  void whatIsMissedIsAskedForOnce(String process, String missed) {
    Browser browser = Browser.of(ada).get("/post").tidy();
    browser.send(FORM, fields(process, "titanium"));
    assertNotNull(browser.page().selectFirst("#at-" + missed + " .field-warning"));
    assertNull(stored(browser.send(FORM, Map.of())).get(missed));
  }

  @Test
  void aMarkIsCalledByItsColour() {
    Browser browser = Browser.of(ada).get("/post").tidy();
    Map<String, String> fields = fields("colour-marking", "titanium");
    fields.put("resultColour", "golden");
    JsonPath report = stored(browser.send(FORM, fields));
    assertEquals("gold", report.get("resultColour.value"));
    browser.get("/reports/" + report.get("id")).tidy();
    assertEquals("Titanium, gold mark", browser.page().selectFirst("h1").text());
    given()
        .get("/api/v1/reports?member=" + ada.handle() + "&resultColour=gold")
        .then()
        .body("total", equalTo(1));
  }
}
