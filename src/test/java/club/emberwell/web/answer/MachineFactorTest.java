package club.emberwell.web.answer;

import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.lessThan;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.web.frame.Browser;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.config.JsonConfig;
import io.restassured.config.RestAssuredConfig;
import io.restassured.path.json.config.JsonPathConfig.NumberReturnType;
import io.restassured.response.ValidatableResponse;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;

/**
 * Six members engrave five materials at a wavelength that nobody else in these tests has; one
 * machine takes half again as much in four of them and never did the fifth.
 */
@QuarkusTest
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class MachineFactorTest {
  private static final List<String> DONE = List.of("cork", "leather", "felt", "slate");
  private static final String NEVER = "glass";
  private Person hot;
  private String machine;

  @BeforeEach
  void membersPost() {
    if (hot != null) {
      return;
    }
    List<Person> others = new ArrayList<>();
    for (int i = 0; i < 5; i++) {
      Person person = People.join();
      others.add(person);
      String own = machine(person, "808 nm", "diode");
      for (int work = 0; work < DONE.size(); work++) {
        post(person, own, DONE.get(work), 20 * (1 + 0.02 * i + 0.01 * work));
      }
      post(person, own, NEVER, 20 * (1 + 0.02 * i));
    }
    hot = People.join();
    machine = machine(hot, "808 nm", "diode");
    for (String material : DONE) {
      post(hot, machine, material, 20 * 1.03 / 1.5);
    }
  }

  private static String post(Person person, String machine, String material, double speed) {
    Map<String, Object> report = new HashMap<>();
    report.put("machine", machine);
    report.put("material", material);
    report.put("process", "surface-engraving");
    report.put(
        "settings",
        Map.of(
            "power", "50 %",
            "speed", speed + " mm/s",
            "lineSpacing", "0.1 mm"));
    report.put("effect", "right");
    return sent(person, report, "/api/v1/reports");
  }

  private static String machine(Person person, String wavelength, String source) {
    Map<String, Object> machine = new HashMap<>();
    machine.put("name", "Mine " + wavelength);
    machine.put("source", source);
    machine.put("wavelength", wavelength);
    machine.put("ratedPower", "10 W");
    machine.put("motion", "gantry");
    machine.put("beamDiameter", "100 um");
    return sent(person, machine, "/api/v1/machines");
  }

  private static String sent(Person person, Map<String, Object> body, String to) {
    return person
        .asks()
        .header("Idempotency-Key", "\"" + UUID.randomUUID() + "\"")
        .body(body)
        .post(to)
        .then()
        .statusCode(201)
        .extract()
        .path("id");
  }

  private static ValidatableResponse consensus(Person person, String machine, String material) {
    return person
        .asks()
        .config(
            RestAssuredConfig.config()
                .jsonConfig(JsonConfig.jsonConfig().numberReturnType(NumberReturnType.DOUBLE)))
        .queryParam("material", material)
        .queryParam("source", "diode")
        .queryParam("machine", machine)
        .get("/api/v1/consensus")
        .then()
        .statusCode(200);
  }

  private String range(String material) {
    return Browser.of(hot)
        .get("/range?material=" + material + "&source=diode&machine=" + machine)
        .tidy()
        .page()
        .select("main")
        .text();
  }

  @Test
  void theApiMovesTheStartOnWorkItNeverDid() {
    consensus(hot, machine, NEVER)
        .body("groups[0].answer.factor.works", equalTo(4))
        .body("groups[0].answer.factor.factor", greaterThan(1.15))
        .body("groups[0].answer.factor.factor", lessThan(1.55))
        .body("groups[0].answer.factor.low", greaterThan(1.0))
        .body("groups[0].answer.start.basis", equalTo("machine-factor"))
        .body("groups[0].answer.start.dose", greaterThan(1.15 * 2.4));
  }

  @Test
  void whatCameOutRightOnItCountsInsteadOfTheFactor() {
    consensus(hot, machine, DONE.get(0))
        .body("groups[0].answer.factor", nullValue())
        .body("groups[0].answer.start.basis", equalTo("middle"))
        .body("groups[0].answer.right.dose", closeTo(3.64, 0.1));
  }

  @Test
  void thePanelTheRangePageAndTheBenchSayItInWords() {
    String said = "times the dose of others, from 4 works.";
    String page = range(NEVER);
    assertTrue(page.contains("Your machine takes 1."), page);
    assertTrue(page.contains(said), page);
    assertTrue(page.contains("Doses on your machine have this in them."), page);
    assertTrue(page.contains("It never crosses wavelength bands or regimes."), page);
    assertFalse(range(DONE.get(0)).contains(said));
    String bench = Browser.of(hot).get("/bench").tidy().page().select("main").text();
    assertTrue(bench.contains(said), bench);
  }

  @Test
  void aMachineOfAnotherBandOrWithTooFewWorksHasNoFactor() {
    String other = machine(hot, "450 nm", "diode");
    consensus(hot, other, NEVER).body("groups[0].answer.factor", nullValue());
    Person newcomer = People.join();
    String fresh = machine(newcomer, "808 nm", "diode");
    post(newcomer, fresh, DONE.get(0), 20);
    post(newcomer, fresh, DONE.get(1), 20);
    consensus(newcomer, fresh, NEVER)
        .body("groups[0].answer.factor", nullValue())
        .body("groups[0].answer.start.basis", equalTo("middle"));
  }
}
