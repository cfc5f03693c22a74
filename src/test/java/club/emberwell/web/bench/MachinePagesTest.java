package club.emberwell.web.bench;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.web.frame.Browser;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@QuarkusTest
class MachinePagesTest {
  private static final String FORM = "main form";

  private static Map<String, String> tube() {
    Map<String, String> fields = new HashMap<>();
    fields.put("name", "Shed tube");
    fields.put("source", "co2");
    fields.put("wavelength", "10.6 um");
    fields.put("ratedPower", "40 W");
    fields.put("motion", "gantry");
    return fields;
  }

  private static Map<String, String> tube(String field, String value) {
    Map<String, String> fields = tube();
    fields.put(field, value);
    return fields;
  }

  private static List<Map<String, Object>> machines(Person person) {
    return person.asks().get("/api/v1/machines").then().statusCode(200).extract().path("items");
  }

  private static String added(Browser browser) {
    browser.get("/bench/machines/new").send(FORM, tube());
    assertEquals(303, browser.status());
    browser.follow();
    return browser.page().select("a[href^=/bench/machines/]:contains(Edit)").attr("href");
  }

  @Test
  void aStrangerIsAskedToSignIn() {
    for (String path :
        List.of(
            "/bench", "/bench/machines/new", "/bench/machines/" + java.util.UUID.randomUUID())) {
      given().get(path).then().statusCode(401);
    }
  }

  @Test
  void anEmptyBenchLeadsOnAndTheFirstMachineLeadsToPosting() {
    Browser browser = Browser.of(People.join());
    browser.get("/bench").tidy();
    assertNotNull(browser.page().selectFirst("main a[href=/bench/machines/new].button"));
    assertNotNull(browser.page().selectFirst("main a[href=/post]"));

    browser.get("/bench/machines/new").tidy().send(FORM, tube());
    assertEquals(303, browser.status());
    browser.follow().tidy();
    assertEquals(200, browser.status());
    assertTrue(browser.page().text().contains("Shed tube"));
    assertNotNull(browser.page().selectFirst(".box-good a[href=/post].button"));
  }

  @Test
  void nothingTypedIsLostWhenFieldsAreAtFault() {
    Person person = People.join();
    Browser browser = Browser.of(person);
    Map<String, String> fields = tube("ratedPower", "forty");
    fields.put("lens", "2");
    fields.put("controllerVersion", "  rev 7 ");
    browser.get("/bench/machines/new").send(FORM, fields);
    assertEquals(422, browser.status());
    browser.tidy();
    assertEquals("Shed tube", browser.field("name"));
    assertEquals("forty", browser.field("ratedPower"));
    assertEquals("2", browser.field("lens"));
    assertEquals("rev 7", browser.field("controllerVersion"));
    assertNotNull(
        browser.page().selectFirst("#source[checked], [name=source][value=co2][checked]"));
    assertEquals("true", browser.page().getElementById("ratedPower").attr("aria-invalid"));
    assertEquals("true", browser.page().getElementById("lens").attr("aria-invalid"));
    assertNotNull(browser.page().selectFirst("#error-summary a[href=#ratedPower]"));
    assertTrue(browser.page().title().startsWith("Error:"));
    assertTrue(machines(person).isEmpty());
  }

  @ParameterizedTest
  @ValueSource(strings = {"narrow", "2 mm", "-2 mrad", "0 mrad", "0.001 mrad", "4 rad"})
  void aDivergenceAtFaultIsExplainedAtItsField(String typed) {
    Person person = People.join();
    Browser browser = Browser.of(person);
    browser.get("/bench/machines/new").send(FORM, tube("divergence", typed));
    assertEquals(422, browser.status());
    browser.tidy();
    assertEquals(typed, browser.field("divergence"));
    assertNotNull(browser.page().selectFirst("details[open] #at-divergence .field-error"));
    assertTrue(machines(person).isEmpty());
    browser.send(FORM, Map.of("divergence", "2 mrad"));
    assertEquals(303, browser.status());
  }

  @Test
  void aNumberWithoutUnitIsAskedAboutAndTheChosenReadingFillsTheField() {
    Browser browser = Browser.of(People.join());
    browser.get("/bench/machines/new").send(FORM, tube("maxSpeed", "600"));
    assertEquals(422, browser.status());
    var button = browser.page().selectFirst("button[name=use:maxSpeed]");
    String reading = button.val();
    browser.send(FORM, Map.of(), Map.of("use:maxSpeed", reading));
    assertEquals(200, browser.status());
    assertEquals(reading, browser.field("maxSpeed"));
    browser.send(FORM, Map.of());
    assertEquals(303, browser.status());
  }

  @Test
  void aBeginnerSaysFourThingsAndTheSourceGivesTheRest() {
    Person person = People.join();
    Browser browser = Browser.of(person).get("/bench/machines/new").tidy();
    assertEquals(
        List.of("name", "source", "ratedPower", "motion"),
        browser
            .page()
            .select(FORM + " [name]:not(details *):not([type=hidden])")
            .eachAttr("name")
            .stream()
            .distinct()
            .toList(),
        "all else is folded");
    browser.send(FORM, tube("wavelength", ""));
    assertEquals(303, browser.status());
    JsonPath machine = machine(person);
    assertEquals(10600, machine.getInt("items[0].wavelength.value"));
    assertEquals("cw", machine.get("items[0].regime"));
    assertTrue(
        machine.getList("items[0].remarks.pointer").containsAll(List.of("/wavelength", "/regime")),
        "what was assumed is told");
  }

  private static JsonPath machine(Person person) {
    return person.asks().get("/api/v1/machines").jsonPath();
  }

  @Test
  void aLensThatIsChosenGivesACalculatedSpotUntilOneIsMeasured() {
    Person person = People.join();
    Browser browser = Browser.of(person);
    browser.get("/bench/machines/new").send(FORM, tube("usualLens", "co2/50.8/5"));
    assertEquals(303, browser.status());
    JsonPath machine = machine(person);
    assertEquals(150.8, machine.getDouble("items[0].beamDiameter.value"), 0.1);
    assertNull(machine.get("items[0].beamDiameter.written"), "nobody wrote it");
    assertEquals(5, machine.getDouble("items[0].inputBeam.value"));
    assertTrue(machine.getList("items[0].remarks.id").contains("spot-calculated"));
    assertTrue(browser.get("/bench").page().text().contains("Spot size at focus (calculated)"));

    browser.get("/bench/machines/" + machine.get("items[0].id")).tidy();
    assertEquals("50.8 mm", browser.field("lens"));
    browser.send(FORM, Map.of("beamDiameter", "180 um"));
    assertEquals(180, machine(person).getDouble("items[0].beamDiameter.value"));
    assertFalse(browser.get("/bench").page().text().contains("(calculated)"));
  }

  @Test
  void modelsOfTheClubAreSuggestedAndAnyOtherMayBeTyped() {
    Person person = People.join();
    Browser browser = Browser.of(person);
    String model = "Tussock " + person.handle();
    browser.get("/bench/machines/new").send(FORM, tube("model", model));
    browser.get("/bench/machines/new");
    assertTrue(browser.page().select("#models option").eachAttr("value").contains(model));
    Person other = People.join();
    List<String> models =
        other.asks().get("/api/v1/machines/models").then().statusCode(200).extract().path("items");
    assertFalse(models.contains(model), "a bench is private until a report tells of it");
    List<String> lenses =
        other.asks().get("/api/v1/machines/lenses").jsonPath().get("items.source");
    assertFalse(lenses.contains("diode"), "for diodes the formula does not hold");
  }

  @Test
  void anUnlikelyWavelengthIsAskedAboutOnceAndThenStored() {
    Person person = People.join();
    Browser browser = Browser.of(person);
    browser.get("/bench/machines/new").send(FORM, tube("wavelength", "1064 nm"));
    assertEquals(422, browser.status());
    assertTrue(browser.page().text().contains("Please check"));
    assertTrue(machines(person).isEmpty());
    browser.tidy().send(FORM, Map.of());
    assertEquals(303, browser.status());
    assertEquals(1, machines(person).size());
  }

  @Test
  void anEditShowsWhatWasTypedAndSavesIt() {
    Person person = People.join();
    Browser browser = Browser.of(person);
    String address = added(browser);
    browser.get(address).tidy();
    assertEquals("10.6 um", browser.field("wavelength"));
    browser.send(FORM, Map.of("name", "Garage tube", "beamDiameter", "0.15 mm"));
    assertEquals(303, browser.status());
    browser.follow();
    assertTrue(browser.page().text().contains("Garage tube"));
    assertTrue(
        browser.page().text().contains("150 um") || browser.page().text().contains("150 µm"));
  }

  @Test
  void twoEditsAtOnceShowBothAndOverwriteOnlyWhenAskedAgain() {
    Person person = People.join();
    Browser browser = Browser.of(person);
    String address = added(browser);
    Browser elsewhere = Browser.of(person);
    elsewhere.get(address);
    browser.get(address).send(FORM, Map.of("name", "First"));
    assertEquals(303, browser.status());

    elsewhere.send(FORM, Map.of("name", "Second"));
    assertEquals(412, elsewhere.status());
    elsewhere.tidy();
    assertEquals("Second", elsewhere.field("name"));
    assertTrue(elsewhere.page().select(".box-warn").text().contains("First"));
    assertEquals("First", machines(person).get(0).get("name"));

    elsewhere.send(FORM, Map.of());
    assertEquals(303, elsewhere.status());
    assertEquals("Second", machines(person).get(0).get("name"));
  }

  @Test
  void takingAwayAsksFirst() {
    Person person = People.join();
    Browser browser = Browser.of(person);
    String address = added(browser);
    browser.get(address + "/delete").tidy();
    assertEquals(200, browser.status());
    assertEquals(1, machines(person).size());
    browser.send(FORM, Map.of());
    assertEquals(303, browser.status());
    assertTrue(machines(person).isEmpty());
    assertEquals(404, browser.get(address).status());
  }

  @Test
  void somebodyElsesMachineIsNotThere() {
    String address = added(Browser.of(People.join()));
    Browser other = Browser.of(People.join());
    assertEquals(404, other.get(address).status());
    assertEquals(404, other.get(address + "/delete").status());
    other.get("/bench/machines/new");
    String token = other.page().select("input[name=form-token]").val();
    assertFalse(token.isEmpty());
  }
}
