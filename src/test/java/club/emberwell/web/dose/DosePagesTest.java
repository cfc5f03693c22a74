package club.emberwell.web.dose;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.laser.safety.EyeLimits;
import club.emberwell.laser.safety.Eyewear;
import club.emberwell.laser.safety.Ventilation;
import club.emberwell.web.frame.Browser;
import io.quarkus.test.junit.QuarkusTest;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.Test;

@QuarkusTest
class DosePagesTest {

  private static String address(String path, Map<String, String> fields) {
    return fields.entrySet().stream()
        .map(e -> e.getKey() + "=" + URLEncoder.encode(e.getValue(), StandardCharsets.UTF_8))
        .collect(Collectors.joining("&", path + "?", ""));
  }

  private static Map<String, String> engraving() {
    Map<String, String> fields = new LinkedHashMap<>();
    fields.put("laser.source", "co2");
    fields.put("laser.wavelength", "10.6 um");
    fields.put("laser.ratedPower", "40 W");
    fields.put("laser.motion", "gantry");
    fields.put("process", "surface-engraving");
    fields.put("settings.power", "100 %");
    fields.put("settings.speed", "400 mm/s");
    fields.put("settings.lineSpacing", "0.1 mm");
    return fields;
  }

  private static Document page(String address) {
    Browser browser = new Browser().get(address);
    assertEquals(200, browser.status(), address);
    return browser.tidy().page();
  }

  private static String value(Document page, String title) {
    Element summary = page.selectFirst("summary:has(span:contains(" + title + "))");
    assertNotNull(summary, title + " in " + page.select("summary").eachText());
    return summary.select("strong").text();
  }

  @Test
  void theCalculatorsAreOpenToEverybody() {
    page("/dose");
    page("/dose/eyes");
    page("/dose/air");
  }

  /** Energy balance by hand: 40 W over 400 mm/s times 0.1 mm is 1 J/mm2. */
  @Test
  void aDoseIsShownWithItsFormulaInputsSourceAndCaveats() {
    Document page = page(address("/dose", engraving()));
    assertTrue(value(page, "Energy per area").startsWith("1 J/"));
    Element opened = page.selectFirst("details:has(span:contains(Energy per area))");
    assertTrue(opened.text().contains("F = P × n / (v × h)"));
    assertTrue(opened.text().contains("400 mm/s"));
    assertTrue(opened.text().contains("Kudela"));
    assertTrue(opened.text().contains("Rated power is what the label says"));
  }

  /** Half the power at the same dose is half the speed; half the spacing doubles it again. */
  @Test
  void theSpeedOfEqualDoseFollowsPowerAndSpacing() {
    Map<String, String> fields = engraving();
    fields.put("other.power", "20 W");
    assertEquals("200 mm/s", page(address("/dose", fields)).select(".equal-speed").text());
    fields.put("other.lineSpacing", "0.05 mm");
    assertEquals("400 mm/s", page(address("/dose", fields)).select(".equal-speed").text());
  }

  /**
   * By hand: 13 W over 1 J/mm² and 0.1 mm is 130 mm/s, 5.118 in/s; 5.2 in/s are 132.08 mm/s, which
   * give 0.984 J/mm².
   */
  @Test
  void aSpeedIsOneThatCanBeSetInTheReadersUnitAndSaysWhichDoseItGives() {
    Map<String, String> fields = engraving();
    fields.put("other.power", "13 W");
    Document metric = page(address("/dose", fields));
    assertEquals("130 mm/s", metric.select(".equal-speed").text());
    assertTrue(metric.select(".box-note:has(.equal-speed)").text().endsWith("gives 1 J/mm²."));
    People.Person person = People.join();
    person
        .asks()
        .header("If-Match", "\"0\"")
        .body(Map.of("numberStyle", "any", "units", Map.of("speed", "[in_i]/s")))
        .put("/api/v1/me/preferences")
        .then()
        .statusCode(200);
    Document inches = Browser.of(person).get(address("/dose", fields)).tidy().page();
    assertEquals("5.2 in/s", inches.select(".equal-speed").text());
    assertTrue(inches.select(".box-note:has(.equal-speed)").text().endsWith("gives 0.984 J/mm²."));
    // a tenth of 40 W: 40 mm/s, 1.5748 in/s; 1.55 in/s are 39.37 mm/s and give 1.016 J/mm²
    Element tenth = inches.selectFirst("tr:has(td:matchesOwn(^10 %$))");
    assertEquals("10 % 4 W 1.55 in/s 1.02 J/mm²", tenth.text());
  }

  @Test
  void everythingTypedStaysWhenAFieldIsAtFault() {
    Map<String, String> fields = engraving();
    fields.put("settings.speed", "400");
    fields.put("settings.passes", "two");
    fields.put("other.power", "banana");
    Browser browser = new Browser().get(address("/dose", fields)).tidy();
    assertEquals(422, browser.status());
    fields.forEach((name, value) -> assertEquals(value, browser.field(name), name));
    for (String name : new String[] {"settings.speed", "settings.passes", "other.power"}) {
      assertEquals("true", browser.page().getElementById(name).attr("aria-invalid"), name);
      assertNotNull(browser.page().selectFirst("#error-summary a[href=#" + name + "]"), name);
    }
    fields.remove("other.power");
    fields.remove("settings.passes");
    String reading = browser.page().select("button[name=use:settings.speed]").val();
    fields.put("use:settings.speed", reading);
    assertEquals(reading, new Browser().get(address("/dose", fields)).field("settings.speed"));
  }

  @Test
  void aMemberFillsInAMachineWithOneLink() {
    People.Person person = People.join();
    Map<String, String> machine =
        Map.of(
            "name", "Corner diode",
            "source", "diode",
            "wavelength", "455 nm",
            "ratedPower", "10 W",
            "motion", "gantry");
    person
        .asks()
        .header("Idempotency-Key", java.util.UUID.randomUUID().toString())
        .body(machine)
        .post("/api/v1/machines")
        .then()
        .statusCode(201);
    Browser browser = Browser.of(person).get("/dose").tidy();
    browser.get(browser.page().select("a:contains(Corner diode)").attr("href")).tidy();
    assertEquals(200, browser.status());
    assertEquals("diode", browser.field("laser.source"));
    assertEquals("10 W", browser.field("laser.ratedPower"));
  }

  @Test
  void aDensityIsTheLaserPackagesRoundedUpAndEndsInAskingAnOfficer() {
    Document page = page("/dose/eyes?wavelength=1064+nm&power=20+W&beam=5+mm");
    double exact =
        Eyewear.density(1064, 20, EyeLimits.accidentalSeconds(1064), 5.0)
            .orElseThrow()
            .opticalDensity();
    double shown = Double.parseDouble(value(page, "average power, at least").substring(3));
    assertTrue(shown >= exact && shown < exact + 0.1, shown + " for " + exact);
    assertTrue(value(page, "Scale number").matches("D 1064 LB\\d+"));
    assertTrue(page.text().contains(EyeLimits.CLOSING));
    assertTrue(page.text().contains("Point source, one exposure"));
  }

  @Test
  void pulsesAndDistancesComeOnceTheirInputsAreThere() {
    Document page =
        page(
            "/dose/eyes?wavelength=1064+nm&power=20+W&beam=5+mm&divergence=2+mrad&lens=160+mm"
                + "&atLens=6+mm&repetitionRate=30+kHz&pulseDuration=100+ns");
    assertTrue(value(page, "Optical density for the pulse train").startsWith("OD "));
    assertTrue(value(page, "Scale number for the pulse train, at least").startsWith("R 1064 LB"));
    assertTrue(page.text().contains("E' = E N^(1/4)"));
    assertTrue(page.text().contains("The stricter of two editions"));
    assertTrue(value(page, "Straight beam").endsWith(" m"));
    assertTrue(value(page, "Behind the lens").endsWith(" m"));
    assertTrue(value(page, "Reflection from a matt surface").endsWith(" m"));
  }

  /** 0.1 degrees are 1.74533 mrad: sqrt(80 / (pi 25.4558)) m / 0.00174533 = 573.05 m, upward. */
  @Test
  void theStraightBeamNeedsNoDiameterAndTakesAnyUnitOfAnAngle() {
    Document page = page("/dose/eyes?wavelength=455+nm&power=10+W&divergence=0.1+deg");
    assertEquals("574 m", value(page, "Straight beam"));
    assertTrue(page.text().contains("it counts as a point"));
  }

  @Test
  void anIncompleteBeamIsRefusedAtItsFields() {
    Browser browser =
        new Browser().get("/dose/eyes?power=20+W&divergence=1.234&pulseDuration=100+ns").tidy();
    assertEquals(422, browser.status());
    assertEquals("1.234", browser.field("divergence"));
    assertEquals("true", browser.page().getElementById("wavelength").attr("aria-invalid"));
    assertEquals("true", browser.page().getElementById("divergence").attr("aria-invalid"));
  }

  @Test
  void aWavelengthOutsideTheTablesGetsNoNumber() {
    Document page = page("/dose/eyes?wavelength=266+nm&power=1+W");
    assertTrue(page.text().contains("no limit for this wavelength"));
    assertTrue(page.text().contains(EyeLimits.CLOSING));
  }

  @Test
  void ductAndRoomAirAreTheLaserPackages() {
    Document page =
        page(
            "/dose/air?flow=400+m3/h&duct=100+mm&length=4+m&width=3+m&height=2.5+m&carried=DRY_DUST");
    double speed = Ventilation.velocityMs(400, 100);
    assertTrue(
        value(page, "Air speed in the duct")
            .startsWith(String.format(Locale.ROOT, "%.2f m/s", speed)));
    double minutes = Ventilation.purgeMinutes(Ventilation.airChangesPerHour(400, 30), 0.99);
    assertEquals(String.format(Locale.ROOT, "%.2f min", minutes), value(page, "Until 99 %"));
    assertTrue(value(page, "Usual for dry dust").startsWith("15 to 20 m/s"));
    assertTrue(page.text().contains(Ventilation.CLOSING));
    given().get("/dose/air?flow=400&length=4+m").then().statusCode(422);
    given().get("/dose/air?flow=400+m3/h&duct=100+mm&carried=ROCKS").then().statusCode(422);
  }
}
