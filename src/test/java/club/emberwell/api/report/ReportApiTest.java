package club.emberwell.api.report;

import static club.emberwell.api.report.Bodies.keyed;
import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.nullValue;
import static org.hamcrest.Matchers.startsWith;
import static org.junit.jupiter.api.Assertions.assertEquals;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
class ReportApiTest {
  private Person ada;

  @BeforeEach
  void join() {
    ada = People.join();
  }

  private static ValidatableResponse read(String id) {
    return given().get("/api/v1/reports/" + id).then();
  }

  // Worked example 2.1 (energy balance F = P n / (v h)): 40 W, 400 mm/s, 0.1 mm give 1.0 J/mm2.
  @Test
  void aPostedReportIsAnsweredNormalisedWithItsDose() {
    Map<String, Object> report = Bodies.report();
    report.put("thickness", "1/8 in");
    String location =
        keyed(ada, report)
            .post("/api/v1/reports")
            .then()
            .statusCode(201)
            .header("ETag", "\"1\"")
            .body("settings.speed.value", equalTo(400))
            .body("settings.speed.unit", equalTo("mm/s"))
            .body("settings.speed.written", equalTo("400 mm/s"))
            .body("settings.powerPercent.unit", equalTo("%"))
            .body("thickness.value", equalTo(3.175f))
            .body("thickness.written", equalTo("1/8 in"))
            .body("derived.basis", equalTo("nominal"))
            .body("derived.averagePower.value", equalTo(40))
            .body("derived.arealDose.value", equalTo(1))
            .body("derived.arealDose.unit", equalTo("J/mm2"))
            .body("derived.lineDose", nullValue())
            .body("material.value", equalTo("birch-plywood"))
            .body("material.written", equalTo("birch plywood"))
            .body("cautions", notNullValue())
            .body("warnings", hasSize(0))
            .body("member.handle", equalTo(ada.handle()))
            .extract()
            .header("Location");
    String id = location.substring(location.lastIndexOf('/') + 1);
    read(id).statusCode(200).header("ETag", startsWith("\"1-")).body("id", equalTo(id));
  }

  // Worked examples 2.4 and 2.5: 20 W, 30 kHz: 0.666667 mJ; 100 ns, square pulse: 6.6667 kW
  // (ISO 11145 and RP Photonics Encyclopedia, both from memory).
  @Test
  void pulseValuesFollowFromRepetitionRateAndDuration() {
    Map<String, Object> report = Bodies.report();
    report.put(
        "laser",
        Map.of(
            "source", "fibre", "wavelength", "1064 nm", "ratedPower", "20 W", "motion", "galvo"));
    report.put("material", "stainless steel");
    report.put(
        "settings",
        Map.of(
            "power", Map.of("value", 20, "unit", "W"),
            "speed", Map.of("value", 12, "unit", "[in_i]/s"),
            "lineSpacing", "0,05 mm",
            "repetitionRate", "30 kHz",
            "pulseDuration", "100 ns"));
    keyed(ada, report)
        .post("/api/v1/reports")
        .then()
        .statusCode(201)
        .body("settings.speed.value", equalTo(304.8f))
        .body("settings.speed.written", equalTo("12 [in_i]/s"))
        .body("derived.pulseEnergy.value", equalTo(0.666666666666667f))
        .body("derived.peakPower.value", equalTo(6.66666666666667f))
        .body("laser.regime", equalTo("ns"));
  }

  @Test
  void aProhibitedMaterialIsRefusedWithHazardAgentAndSource() {
    Map<String, Object> report = Bodies.report();
    report.put("material", "vinyl");
    keyed(ada, report)
        .post("/api/v1/reports")
        .then()
        .statusCode(422)
        .contentType("application/problem+json")
        .body("errors[0].pointer", equalTo("/material"))
        .body("prohibited.agent", containsString("hydrogen chloride"))
        .body("prohibited.hazard", notNullValue())
        .body("prohibited.source", notNullValue());
  }

  @Test
  void implausibleValuesAreStoredAndWarnedOf() {
    Map<String, Object> report = Bodies.report();
    report.put("settings", Map.of("power", "45 %", "speed", "9000 mm/s", "lineSpacing", "0.1 mm"));
    keyed(ada, report)
        .post("/api/v1/reports")
        .then()
        .statusCode(201)
        .body("warnings.pointer", hasItem("/settings/speed"));
  }

  @Test
  void theSameKeyAnswersTheSameAndStoresOnce() {
    String key = Bodies.key();
    Map<String, Object> report = Bodies.report();
    report.put("notes", "once");
    String first = postWith(key, report);
    assertEquals(first, postWith(key, report));
    report.put("notes", "twice");
    ada.asks()
        .header("Idempotency-Key", key)
        .body(report)
        .post("/api/v1/reports")
        .then()
        .statusCode(422);
    ada.asks().body(report).post("/api/v1/reports").then().statusCode(400);
  }

  private String postWith(String key, Map<String, Object> report) {
    return ada.asks()
        .header("Idempotency-Key", key)
        .body(report)
        .post("/api/v1/reports")
        .then()
        .statusCode(201)
        .extract()
        .path("id");
  }

  @Test
  void aClientsOwnIdIsKeptAndTwiceTheSameIsOneReport() {
    String id = UUID.randomUUID().toString();
    Map<String, Object> report = Bodies.report();
    report.put("id", id);
    assertEquals(id, Bodies.post(ada, report));
    assertEquals(id, Bodies.post(ada, report));
    ada.asks().get("/api/v1/reports/" + id + "/history").then().body("items", hasSize(1));
    keyed(People.join(), report)
        .post("/api/v1/reports")
        .then()
        .statusCode(422)
        .body("errors[0].pointer", equalTo("/id"));
  }

  @Test
  void theSameWordsTwiceAreWarnedOf() {
    Bodies.post(ada, Bodies.report());
    keyed(ada, Bodies.report())
        .post("/api/v1/reports")
        .then()
        .statusCode(201)
        .body("warnings.id", hasItem("same-as-before"));
  }

  @Test
  void anEditNeedsTheVersionItIsBasedOn() {
    String id = Bodies.post(ada, Bodies.report());
    Map<String, Object> edit = Bodies.report();
    edit.put("notes", "cleaned the lens");
    edit.put("reason", "forgot the lens");
    String path = "/api/v1/reports/" + id;
    ada.asks().body(edit).put(path).then().statusCode(428);
    ada.asks()
        .header("If-Match", "\"1\"")
        .body(edit)
        .put(path)
        .then()
        .statusCode(200)
        .header("ETag", "\"2\"")
        .body("notes", equalTo("cleaned the lens"));
    ada.asks()
        .header("If-Match", "\"1\"")
        .body(Bodies.report())
        .put(path)
        .then()
        .statusCode(412)
        .header("ETag", "\"2\"");
    read(id).body("notes", equalTo("cleaned the lens"));
    given()
        .get(path + "/history")
        .then()
        .statusCode(200)
        .body("items.version", contains(2, 1))
        .body("items.action", contains("edited", "posted"))
        .body("items[0].reason", equalTo("forgot the lens"))
        .body("items[0].changes[0].pointer", equalTo("/notes"))
        .body("items[0].changes[0].after", equalTo("cleaned the lens"));
  }

  @Test
  void onlyItsAuthorEditsAndWithdraws() {
    String id = Bodies.post(ada, Bodies.report());
    Person other = People.join();
    other
        .asks()
        .header("If-Match", "\"1\"")
        .body(Bodies.report())
        .put("/api/v1/reports/" + id)
        .then()
        .statusCode(403);
    other.asks().delete("/api/v1/reports/" + id).then().statusCode(403);
    given().delete("/api/v1/reports/" + id).then().statusCode(401);
    read(id).statusCode(200);
  }

  @Test
  void aWithdrawnReportIsGoneForOthersAndKeptForItsAuthor() {
    String id = Bodies.post(ada, Bodies.report());
    ada.asks().header("If-Match", "\"7\"").delete("/api/v1/reports/" + id).then().statusCode(412);
    ada.asks().delete("/api/v1/reports/" + id).then().statusCode(204);
    ada.asks().delete("/api/v1/reports/" + id).then().statusCode(204);
    read(id).statusCode(410);
    given().get("/api/v1/reports/" + id + "/history").then().statusCode(410);
    ada.asks()
        .get("/api/v1/reports/" + id)
        .then()
        .statusCode(200)
        .body("state", equalTo("withdrawn"));
    ada.asks()
        .get("/api/v1/reports/" + id + "/history")
        .then()
        .body("items.action", contains("withdrawn", "posted"));
    ada.asks()
        .header("If-Match", "\"2\"")
        .body(Bodies.report())
        .put("/api/v1/reports/" + id)
        .then()
        .statusCode(403);
  }

  @Test
  void aRepeatTakesWhatItDoesNotSayFromTheOriginal() {
    Map<String, Object> original = Bodies.report();
    original.put("thickness", "3 mm");
    String id = Bodies.post(ada, original);
    Person ben = People.join();
    Map<String, Object> repeat =
        Map.of(
            "laser", Bodies.laser(), "settings", Map.of("speed", "300 mm/s"), "effect", "too-much");
    String mine =
        keyed(ben, repeat)
            .post("/api/v1/reports/" + id + "/repeats")
            .then()
            .statusCode(201)
            .body("repeatOf", equalTo(id))
            .body("settings.speed.value", equalTo(300))
            .body("settings.powerPercent.written", equalTo("100 %"))
            .body("thickness.value", equalTo(3))
            .body("material.value", equalTo("birch-plywood"))
            .body("effect", equalTo("too-much"))
            .body("member.handle", equalTo(ben.handle()))
            .extract()
            .path("id");
    given().get("/api/v1/reports/" + id + "/repeats").then().body("items.id", contains(mine));
    keyed(ben, Map.of("laser", Bodies.laser(), "effect", "right"))
        .post("/api/v1/reports/" + id + "/repeats")
        .then()
        .statusCode(201);
    keyed(ada, Map.of("laser", Bodies.laser(), "effect", "too-little"))
        .post("/api/v1/reports/" + id + "/repeats")
        .then()
        .statusCode(201);
    keyed(People.join(), repeat).post("/api/v1/reports/" + id + "/repeats").then().statusCode(201);
    given()
        .get("/api/v1/reports/" + id)
        .then()
        .body("triedByOthers.members", equalTo(2))
        .body("triedByOthers.right", equalTo(1))
        .body("triedByOthers.tooLittle", equalTo(0))
        .body("triedByOthers.tooMuch", equalTo(1));
    keyed(ben, repeat)
        .post("/api/v1/reports/" + UUID.randomUUID() + "/repeats")
        .then()
        .statusCode(404);
  }

  @Test
  void aMachineStandsInForTheLaserAndItsReportsOutliveIt() {
    String machine =
        keyed(ada, Bodies.machine())
            .post("/api/v1/machines")
            .then()
            .statusCode(201)
            .extract()
            .path("id");
    Map<String, Object> report = Bodies.report();
    report.remove("laser");
    report.put("machine", machine);
    String id = Bodies.post(ada, report);
    ada.asks().delete("/api/v1/machines/" + machine).then().statusCode(204);
    read(id).body("machine.name", equalTo("Shed tube")).body("laser.ratedPower.value", equalTo(40));
    keyed(ada, report)
        .post("/api/v1/reports")
        .then()
        .statusCode(422)
        .body("errors[0].pointer", equalTo("/machine"));
  }

  @Test
  void aGridHasTrialsInsteadOfOneTrialOnTop() {
    Map<String, Object> report = Bodies.report();
    report.remove("settings");
    report.remove("effect");
    report.put(
        "trials",
        List.of(
            Map.of("row", 0, "column", 0, "settings", Bodies.settings(), "effect", "too-little"),
            Map.of("row", 0, "column", 1, "settings", Bodies.settings(), "effect", "right")));
    keyed(ada, report)
        .post("/api/v1/reports")
        .then()
        .statusCode(201)
        .body("trials.effect", contains("too-little", "right"))
        .body("trials.column", contains(0, 1))
        .body("settings", nullValue());
  }

  @Test
  void whatIsUnknownOrMalformedIsNotFound() {
    read(UUID.randomUUID().toString()).statusCode(404);
    read("not-an-id").statusCode(404);
    read("not-an-id").body("detail", not(containsString("java")));
  }
}
