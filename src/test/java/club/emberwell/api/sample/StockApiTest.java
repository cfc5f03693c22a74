package club.emberwell.api.sample;

import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.endsWith;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.greaterThanOrEqualTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.matchesPattern;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Samples, their tags, lots, and how many to order, over JSON. */
@QuarkusTest
class StockApiTest {
  private Person ada;
  private Person eve;

  @BeforeEach
  void join() {
    ada = People.join();
    eve = People.join();
  }

  private static Response post(Person by, String path, Object body) {
    return by.asks()
        .header("Idempotency-Key", UUID.randomUUID().toString())
        .body(body)
        .post("/api/v1/" + path);
  }

  private static String report(Person by) {
    Map<String, Object> laser =
        Map.of("source", "co2", "wavelength", "10.6 um", "ratedPower", "40 W", "motion", "gantry");
    Map<String, Object> settings =
        Map.of("power", "60 %", "speed", "400 mm/s", "lineSpacing", "0.1 mm");
    Map<String, Object> report =
        Map.of(
            "laser",
            laser,
            "material",
            "maple",
            "process",
            "surface-engraving",
            "settings",
            settings,
            "effect",
            "right",
            "notes",
            "Words of " + UUID.randomUUID());
    return post(by, "reports", report).then().statusCode(201).extract().path("id");
  }

  private static Map<String, Object> lot() {
    Map<String, Object> lot = new HashMap<>();
    lot.put("supplier", "North Blanks");
    lot.put("material", "stainless steel");
    lot.put("coating", "powder coat");
    lot.put("colour", "navy");
    lot.put("received", 50);
    lot.put("usable", 46);
    lot.put("burned", 12);
    lot.put("date", "2026-09-12");
    return lot;
  }

  @Test
  void aSampleIsPutAwayFoundChangedAndTakenAway() {
    Map<String, Object> sample = new HashMap<>();
    sample.put("report", report(ada));
    sample.put("box", "Box 3");
    sample.put("place", "left shelf");
    Response made = post(ada, "samples", sample);
    made.then()
        .statusCode(201)
        .header("ETag", "\"1\"")
        .body("title", equalTo("maple"))
        .body("tag.code", matchesPattern("[A-Z]\\w{2}-\\w"))
        .body("tag.url", endsWith("/t/" + made.path("tag.code")));
    String path = "/api/v1/samples/" + made.path("id");
    for (String words : List.of("box 3", "MAPLE left", made.<String>path("tag.code"), "")) {
      ada.asks().queryParam("q", words).get("/api/v1/samples").then().body("items", hasSize(1));
    }
    for (String words : List.of("box drawer", "3% x", "_")) {
      ada.asks().queryParam("q", words).get("/api/v1/samples").then().body("items", hasSize(0));
    }
    sample.put("what", "Second try");
    sample.put("notes", "A little dark.");
    ada.asks().body(sample).put(path).then().statusCode(428);
    ada.asks()
        .header("If-Match", "\"1\"")
        .body(sample)
        .put(path)
        .then()
        .statusCode(200)
        .body("title", equalTo("Second try"))
        .body("tag.code", equalTo(made.path("tag.code")));
    ada.asks().header("If-Match", "\"1\"").body(sample).put(path).then().statusCode(412);
    ada.asks().delete(path).then().statusCode(204);
    ada.asks().get(path).then().statusCode(404);
    ada.asks().get("/api/v1/samples").then().body("items", hasSize(0));
  }

  @Test
  void theSameSampleUnderTheSameIdIsOneWithOneTag() {
    Map<String, Object> sample = Map.of("id", UUID.randomUUID(), "what", "Oak coaster");
    String code = post(ada, "samples", sample).then().statusCode(201).extract().path("tag.code");
    post(ada, "samples", sample).then().statusCode(201).body("tag.code", equalTo(code));
    Map<String, Object> other = new HashMap<>(sample);
    other.put("what", "Another");
    post(ada, "samples", other).then().statusCode(422).body("errors.pointer", contains("/id"));
  }

  @Test
  void aTagLeadsItsOwnerToTheThingAndOthersToItsReportOnly() {
    String report = report(ada);
    Response shown = post(ada, "samples", Map.of("report", report));
    String code = shown.path("tag.code");
    String typed = code.toLowerCase().replace("-", " ");
    ada.asks()
        .get("/api/v1/tags/" + typed)
        .then()
        .body("kind", equalTo("sample"))
        .body("id", equalTo(shown.path("id")))
        .body("report", equalTo(report));
    eve.asks()
        .get("/api/v1/tags/" + code)
        .then()
        .statusCode(200)
        .body("id", nullValue())
        .body("kind", nullValue())
        .body("report", equalTo(report));
    ada.asks().delete("/api/v1/reports/" + report).then().statusCode(204);
    eve.asks().get("/api/v1/tags/" + code).then().statusCode(404);
    String plain = post(ada, "samples", Map.of("what", "Oak")).path("tag.code");
    eve.asks().get("/api/v1/tags/" + plain).then().statusCode(404);
  }

  @Test
  void aWrongCheckLetterIsToldFromAnUnknownTag() {
    ada.asks()
        .get("/api/v1/tags/K7F-5")
        .then()
        .statusCode(422)
        .body("errors.pointer", contains("/tag"))
        .body(
            "errors.detail",
            contains("K7F-5 is not a tag: a character is wrong, or two are swapped."));
    ada.asks().get("/api/v1/tags/999-N").then().statusCode(404);
  }

  @Test
  void whatASampleCannotShowIsSaidAtTheField() {
    String nobody = UUID.randomUUID().toString();
    post(ada, "samples", Map.of("report", nobody))
        .then()
        .statusCode(422)
        .body("errors.pointer", contains("/report"));
    post(ada, "samples", Map.of("grid", nobody))
        .then()
        .statusCode(422)
        .body("errors.detail", contains("You have no such grid."));
    post(ada, "samples", Map.of("report", nobody, "grid", nobody))
        .then()
        .statusCode(422)
        .body("errors.pointer", contains("/grid"));
    post(ada, "samples", Map.of("box", "x".repeat(81)))
        .then()
        .statusCode(422)
        .body("errors.pointer", contains("/what", "/box"));
  }

  @Test
  void aSampleOutlivesTheReportOfSomebodyElse() {
    String report = report(eve);
    Map<String, Object> sample = new HashMap<>(Map.of("report", report));
    String id = post(ada, "samples", sample).then().statusCode(201).extract().path("id");
    eve.asks().delete("/api/v1/reports/" + report).then().statusCode(204);
    sample.put("place", "drawer");
    ada.asks()
        .header("If-Match", "\"1\"")
        .body(sample)
        .put("/api/v1/samples/" + id)
        .then()
        .statusCode(200)
        .body("title", equalTo("maple"));
  }

  @Test
  void aLotIsWrittenDownChangedAndTakenAway() {
    Response made = post(ada, "lots", lot());
    made.then()
        .statusCode(201)
        .body("title", equalTo("stainless steel, powder coat, navy, from North Blanks"))
        .body("usable", equalTo(46))
        .body("date", equalTo("2026-09-12"));
    String path = "/api/v1/lots/" + made.path("id");
    Map<String, Object> changed = lot();
    changed.put("burned", 46);
    ada.asks()
        .header("If-Match", "\"1\"")
        .body(changed)
        .put(path)
        .then()
        .statusCode(200)
        .header("ETag", "\"2\"")
        .body("burned", equalTo(46));
    ada.asks().get("/api/v1/lots").then().body("items.burned", contains(46));
    eve.asks().get(path).then().statusCode(404);
    ada.asks().delete(path).then().statusCode(204);
    ada.asks().get("/api/v1/lots").then().body("items", hasSize(0));
  }

  @ParameterizedTest
  @CsvSource({
    "received, 0",
    "received, -4",
    "received, 2000000",
    "usable, 51",
    "usable, -1",
    "burned, 47",
    "date, 2026-02-30",
    "date, yesterday",
    "date, 2999-01-01",
    "supplier, ''",
    "material, ''"
  })
  void aLotsFieldAtFaultIsNamed(String field, String value) {
    Map<String, Object> bad = lot();
    bad.put(field, value.matches("-?\\d+") ? (Object) Integer.valueOf(value) : value);
    post(ada, "lots", bad).then().statusCode(422).body("errors.pointer", contains("/" + field));
    ada.asks().get("/api/v1/lots").then().body("items", hasSize(0));
  }

  private Response order(Object body) {
    return ada.asks().body(body).post("/api/v1/lots/order");
  }

  @Test
  void howManyToOrderFollowsFromOnesOwnLots() {
    Map<String, Object> asked = new HashMap<>();
    asked.put(
        "lines",
        List.of(Map.of("name", "navy", "pieces", 24), Map.of("name", "black", "pieces", 12)));
    asked.put("tests", 1);
    asked.put("lots", "north blanks");
    order(asked).then().statusCode(422).body("errors.pointer", contains("/lots"));
    post(ada, "lots", lot());
    Response answer = order(asked);
    answer
        .then()
        .statusCode(200)
        .body("lines.name", contains("navy", "black"))
        .body("usable.from", equalTo("lots"))
        .body("usable.usable", equalTo(46))
        .body("chance", greaterThanOrEqualTo(0.9f));
    assertEquals(
        answer.<Integer>path("total"),
        answer.<Integer>path("lines[0].order") + answer.<Integer>path("lines[1].order"));
  }

  /** As R says; see order_size.csv. */
  @Test
  void aRecordAndAKnownShareGiveWhatRGives() {
    order(Map.of("lines", List.of(Map.of("pieces", 24)), "usable", 46, "received", 50))
        .then()
        .body("lines[0].order", equalTo(29))
        .body("lines[0].chance", equalTo(0.92356465f))
        .body("usable.alpha", equalTo(46.5f));
    order(Map.of("lines", List.of(Map.of("pieces", 24)), "share", 0.95, "chance", 0.99))
        .then()
        .body("lines[0].order", equalTo(29))
        .body("usable.from", equalTo("share"))
        .body("usable.alpha", nullValue());
    order(Map.of("lines", List.of(Map.of("pieces", 10))))
        .then()
        .body("lines[0].order", equalTo(14))
        .body("usable.from", equalTo("assumed"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "{\"lines\": []} | /lines/0/pieces",
        "{} | /lines/0/pieces",
        "{\"lines\": [{\"pieces\": -1}]} | /lines/0/pieces",
        "{\"lines\": [{\"pieces\": 10000}]} | /lines/0/pieces",
        "{\"lines\": [{\"name\": \"navy\"}]} | /lines/0/pieces",
        "{\"lines\": [{\"pieces\": 5}], \"tests\": -1} | /tests",
        "{\"lines\": [{\"pieces\": 5}], \"chance\": 1} | /chance",
        "{\"lines\": [{\"pieces\": 5}], \"chance\": 90} | /chance",
        "{\"lines\": [{\"pieces\": 5}], \"share\": 0} | /share",
        "{\"lines\": [{\"pieces\": 5}], \"share\": 1.2} | /share",
        "{\"lines\": [{\"pieces\": 5}], \"share\": 0.9, \"lots\": \"all\"} | /lots",
        "{\"lines\": [{\"pieces\": 5}], \"usable\": 6, \"received\": 5} | /usable",
        "{\"lines\": [{\"pieces\": 5}], \"usable\": 6} | /received",
        "{\"lines\": [{\"pieces\": 5}], \"usable\": 0, \"received\": 0} | /received",
        "{\"lines\": [{\"pieces\": 5000}], \"usable\": 0, \"received\": 900} | /lines/0/pieces"
      })
  void whatCannotBeOrderedIsSaidAtTheField(String asked, String pointer) {
    order(asked).then().statusCode(422).body("errors.pointer", contains(pointer));
  }
}
