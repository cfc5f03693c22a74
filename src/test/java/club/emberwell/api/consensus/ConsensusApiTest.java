package club.emberwell.api.consensus;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItems;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.nullValue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.config.JsonConfig;
import io.restassured.config.RestAssuredConfig;
import io.restassured.path.json.config.JsonPathConfig.NumberReturnType;
import io.restassured.response.ValidatableResponse;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Ranges over HTTP, from posting reports on. */
@QuarkusTest
class ConsensusApiTest {
  private static final String CONSENSUS = "/api/v1/consensus";
  private List<Person> people;

  @BeforeEach
  void join() {
    people = new ArrayList<>();
  }

  private Person person(int i) {
    while (people.size() <= i) {
      people.add(People.join());
    }
    return people.get(i);
  }

  private static Map<String, Object> report(String power, String speed, String effect) {
    Map<String, Object> body = new LinkedHashMap<>();
    body.put(
        "laser",
        Map.of(
            "source", "co2",
            "wavelength", "10.6 um",
            "ratedPower", "40 W",
            "beamDiameter", "150 um",
            "motion", "gantry",
            "regime", "cw"));
    body.put("material", "slate");
    body.put("process", "surface-engraving");
    body.put("settings", Map.of("power", power, "speed", speed, "lineSpacing", "0.1 mm"));
    body.put("effect", effect);
    return body;
  }

  private void post(int who, Map<String, Object> body) {
    person(who)
        .asks()
        .header("Idempotency-Key", UUID.randomUUID().toString())
        .body(body)
        .post("/api/v1/reports")
        .then()
        .statusCode(201);
  }

  /** Only what these people posted. */
  private String ours() {
    return people.stream()
        .map(p -> "member=" + p.handle())
        .collect(Collectors.joining("&", "?", ""));
  }

  private ValidatableResponse range(String more) {
    return given()
        .config(
            RestAssuredConfig.config()
                .jsonConfig(JsonConfig.jsonConfig().numberReturnType(NumberReturnType.DOUBLE)))
        .get(CONSENSUS + ours() + more)
        .then();
  }

  @Test
  void threeMembersMakeARange() {
    post(0, report("20 W", "200 mm/s", "right"));
    post(1, report("20 W", "12 in/s", "right"));
    post(2, report("20 W", "400 mm/s", "right"));
    post(2, report("20 W", "100 mm/s", "too-much"));
    range("")
        .statusCode(200)
        .body("groups", hasSize(1))
        .body("groups[0].key.process", equalTo("surface-engraving"))
        .body("groups[0].key.band", equalTo("10600"))
        .body("groups[0].key.regime", equalTo("cw"))
        .body("groups[0].trials", equalTo(4))
        .body("groups[0].reports", equalTo(4))
        .body("groups[0].voices", equalTo(3))
        .body("groups[0].machines", equalTo(3))
        .body("groups[0].evidence", equalTo("sparse"))
        .body("groups[0].settings.speed.median", closeTo(304.8, 1e-9))
        .body("groups[0].settings.speed.unit", equalTo("mm/s"))
        .body("groups[0].settings.speed.medianLow", nullValue())
        .body("groups[0].settings.speed.nextProbability", closeTo(0.5, 1e-12))
        .body("groups[0].dose.kind", equalTo("areal"))
        .body("groups[0].dose.unit", equalTo("J/mm2"))
        .body("groups[0].dose.n", equalTo(3))
        .body("groups[0].dose.max", equalTo(1))
        .body("groups[0].success.right", equalTo(3))
        .body("groups[0].success.share", closeTo(2.5 / 3, 1e-12))
        .body("groups[0].band.probability", closeTo(0.5, 1e-12))
        .body("groups[0].window.lower.kind", equalTo("not-tried"))
        .body("groups[0].window.upper.kind", equalTo("not-known"))
        .body("groups[0].camps.found", equalTo(false))
        .body("groups[0].contrasts", hasSize(0))
        .body("groups[0].cautions", not(hasSize(0)))
        .body("groups[0].forMachine", nullValue())
        .body("groups[0].explain", nullValue());
  }

  @Test
  void belowThreeVoicesQuantilesAreNullAndTheDotsAreGiven() {
    post(0, report("20 W", "200 mm/s", "right"));
    post(1, report("20 W", "400 mm/s", "right"));
    range("")
        .body("groups[0].evidence", equalTo("two-voices"))
        .body("groups[0].dose.median", nullValue())
        .body("groups[0].dose.values", hasSize(2))
        .body("groups[0].dose.values[0]", closeTo(0.5, 1e-12))
        .body("groups[0].between.missing", notNullValue());
  }

  @Test
  void everyFilterOfTheSearchWorksHere() {
    post(0, report("20 W", "200 mm/s", "right"));
    post(0, report("20 W", "400 mm/s", "right"));
    range("&speedMin=300 mm/s").body("groups[0].trials", equalTo(1));
    range("&material=walnut").body("groups", hasSize(0));
    range("&effect=too much").body("groups", hasSize(0));
  }

  @Test
  void everyNumberOpensToItsVoices() {
    post(0, report("20 W", "200 mm/s", "right"));
    post(1, report("20 W", "400 mm/s", "right"));
    range("&explain=true")
        .body(
            "groups[0].explain.voices.arealDose.member.handle",
            contains(person(1).handle(), person(0).handle()))
        .body("groups[0].explain.numbers.number", hasItems("dose", "voices", "success.share"))
        .body(
            "groups[0].explain.numbers.find { it.number == 'dose' }.formula",
            equalTo("F = P × n / (v × h)"));
  }

  @Test
  void aRangeIsCarriedToOnesOwnMachineWithTheVerdictFirst() {
    for (int i = 0; i < 3; i++) {
      post(i, report("20 W", (200 + 50 * i) + " mm/s", "right"));
    }
    Person ada = person(0);
    String machine =
        ada.asks()
            .header("Idempotency-Key", UUID.randomUUID().toString())
            .body(
                Map.of(
                    "name",
                    "Bench",
                    "source",
                    "co2",
                    "wavelength",
                    "10.6 um",
                    "ratedPower",
                    "40 W",
                    "beamDiameter",
                    "150 um",
                    "motion",
                    "gantry",
                    "regime",
                    "cw",
                    "maxSpeed",
                    "500 mm/s"))
            .post("/api/v1/machines")
            .then()
            .statusCode(201)
            .extract()
            .path("id");
    String path = CONSENSUS + ours() + "&machine=" + machine;
    ada.asks()
        .get(path)
        .then()
        .statusCode(200)
        .body("groups[0].forMachine.machine", equalTo(machine))
        .body("groups[0].forMachine.verdict", equalTo("start-of-grid"))
        .body("groups[0].forMachine.reasons[0]", containsString("A start for a test"))
        .body("groups[0].forMachine.basis", equalTo("quartiles"))
        .body("groups[0].forMachine.lines.place", contains("low", "middle", "high"))
        .body("groups[0].forMachine.limits.pairs", hasSize(6));
    given().get(path).then().statusCode(400).body("errors.pointer", contains("/machine"));
    person(1).asks().get(path).then().statusCode(400).body("errors.pointer", contains("/machine"));
  }

  @Test
  void whatCannotBeReadIsRefusedWithItsPointer() {
    person(0);
    range("&machine=mine").statusCode(400).body("errors.pointer", contains("/machine"));
    range("&explain=perhaps").statusCode(400).body("errors.pointer", contains("/explain"));
    range("&explain=true&explain=true")
        .statusCode(400)
        .body("errors.pointer", contains("/explain"));
    range("&spacing=0 mm").statusCode(422).body("errors.pointer", contains("/spacing"));
    range("&spacing=0.1").statusCode(422).body("errors.pointer", contains("/spacing"));
    range("&colur=red").statusCode(400).body("errors.pointer", contains("/colur"));
  }

  @Test
  void whatTheWordsNameIsCautionedThoughNothingIsFound() {
    given()
        .get("/api/v1/consensus?q=galvanized zzyzx")
        .then()
        .body("groups", hasSize(0))
        .body("cautions.id", hasItems("zinc-metal-fume"))
        .body("cautions[0].class", equalTo("care"));
    given()
        .get("/api/v1/reports?q=teflon")
        .then()
        .body("cautions[0].class", equalTo("ban"))
        .body("cautions[0].evidence.source", notNullValue());
    given()
        .queryParam("with", "material=brass", "q=oak")
        .get("/api/v1/comparison")
        .then()
        .body("searches[0].cautions.id", hasItems("zinc-metal-fume"));
  }

  @Test
  void theApiDescriptionListsEveryParameter() {
    given()
        .accept("application/json")
        .get("/api/v1/openapi.json")
        .then()
        .body(
            "paths.'/api/v1/consensus'.get.parameters.name",
            hasItems("q", "material", "machine", "spacing", "explain"));
  }
}
