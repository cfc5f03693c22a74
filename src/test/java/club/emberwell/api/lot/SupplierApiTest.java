package club.emberwell.api.lot;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.launch.StatementCount;
import club.emberwell.report.photo.Pictures;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.config.JsonConfig;
import io.restassured.config.RestAssuredConfig;
import io.restassured.path.json.config.JsonPathConfig.NumberReturnType;
import io.restassured.response.ValidatableResponse;
import java.io.IOException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Usable shares, suppliers, drift and photos of lots, over JSON. */
@QuarkusTest
class SupplierApiTest {
  private static final RestAssuredConfig DOUBLES =
      RestAssuredConfig.config()
          .jsonConfig(JsonConfig.jsonConfig().numberReturnType(NumberReturnType.DOUBLE));

  /** Nobody else's in this database. */
  private final String supplier = "Blanks of " + UUID.randomUUID();

  private Person ada;

  @BeforeEach
  void join() {
    ada = People.join();
  }

  private Map<String, Object> lot(String batch, int received, Integer usable, String date) {
    Map<String, Object> lot = new HashMap<>();
    lot.put("supplier", supplier);
    lot.put("batch", batch);
    lot.put("material", "Slate");
    lot.put("received", received);
    lot.put("usable", usable);
    lot.put("date", date);
    lot.values().removeIf(value -> value == null);
    return lot;
  }

  private static Map<String, Object> shared(Map<String, Object> lot) {
    lot.put("shared", true);
    return lot;
  }

  private static void burned(Person by, String batch, double millimetresPerSecond) {
    Map<String, Object> laser =
        Map.of("source", "co2", "wavelength", "10.6 um", "ratedPower", "40 W", "motion", "gantry");
    Map<String, Object> settings =
        Map.of("power", "60 %", "speed", millimetresPerSecond + " mm/s", "lineSpacing", "0.1 mm");
    Map<String, Object> report = new HashMap<>();
    report.put("laser", laser);
    report.put("material", "slate");
    report.put("process", "surface-engraving");
    report.put("settings", settings);
    report.put("effect", "right");
    report.put("lot", batch);
    report.put("notes", "Words of " + UUID.randomUUID());
    by.makes("reports", report);
  }

  private ValidatableResponse got(Person by, String path) {
    return by.asks().config(DOUBLES).get("/api/v1/" + path).then().statusCode(200);
  }

  /** R 4.3: prop.test(81, 263, correct = FALSE), Newcombe 1998 table I: 0.2553 to 0.3662. */
  @Test
  void theUsableShareHasWilsonsInterval() {
    String id = ada.makes("lots", lot("A", 263, 81, null));
    got(ada, "lots/" + id)
        .body("usableShare.share", closeTo(81.0 / 263, 1e-12))
        .body("usableShare.low", closeTo(0.2553, 5e-5))
        .body("usableShare.high", closeTo(0.3662, 5e-5));
    got(ada, "lots").body("items[0].usableShare.low", closeTo(0.2553, 5e-5));
    String blind = ada.makes("lots", lot("B", 20, null, null));
    got(ada, "lots/" + blind).body("usableShare", nullValue());
  }

  @Test
  void aSupplierIsTakenAsOneAndToldOfFromThreeMembersOn() {
    Person ben = People.join();
    Person eve = People.join();
    ada.makes("lots", shared(lot(null, 50, 46, "2026-02-03")));
    Map<String, Object> spelled = shared(lot(null, 40, 40, "2026-03-20"));
    spelled.put("supplier", "  " + supplier.toUpperCase().replace(" ", "  "));
    ben.makes("lots", spelled);
    eve.makes("lots", lot(null, 30, 3, null));
    assertFalse(names().contains(supplier), "two members share, a third keeps it private");
    Map<String, Object> third = shared(lot(null, 30, 24, null));
    third.put("notes", "A secret of mine");
    eve.makes("lots", third);
    Map<String, Object> line =
        got(ada, "suppliers?q=" + supplier)
            .extract()
            .jsonPath()
            .getMap("items.find { it.lots == 3 && it.name == '" + supplier + "' }");
    String code = (String) line.get("code");
    got(ada, "suppliers/" + code)
        .body("members", equalTo(3))
        .body("lots", equalTo(3))
        .body("pieces.usable", equalTo(110))
        .body("pieces.received", equalTo(120))
        // R: prop.test(110, 120, correct = FALSE)
        .body("pieces.low", closeTo(0.8533, 5e-4))
        .body("least", closeTo(0.8, 1e-12))
        .body("most", closeTo(1, 1e-12))
        .body("blanks", hasSize(1))
        .body("sharedLots.month", contains("2026-03", "2026-02", null))
        .body("drifts", hasSize(0));
    String said = got(ada, "suppliers/" + code).extract().asString();
    for (Person person : List.of(ada, ben, eve)) {
      assertFalse(said.contains(person.handle()) || said.contains(person.id()), said);
    }
    assertFalse(said.contains("secret"), said);
    eve.asks().get("/api/v1/suppliers/0123456789ab").then().statusCode(404);
    String gone = got(eve, "lots").extract().path("items.find { it.shared }.id");
    eve.asks().delete("/api/v1/lots/" + gone).then().statusCode(204);
    assertFalse(names().contains(supplier), "who takes it back is counted no more");
    ada.asks().get("/api/v1/suppliers/" + code).then().statusCode(404);
  }

  private List<String> names() {
    return got(ada, "suppliers?size=100&q=" + supplier).extract().path("items.name");
  }

  @Test
  void theListIsRankedByTheLowerBound() {
    List<Person> members = Stream.of(ada, People.join(), People.join()).toList();
    for (Person member : members) {
      Map<String, Object> few = shared(lot(null, 3, 3, null));
      few.put("supplier", supplier + " few");
      member.makes("lots", few);
      Map<String, Object> many = shared(lot(null, 100, 97, null));
      many.put("supplier", supplier + " many");
      member.makes("lots", many);
    }
    List<String> names = names();
    // 9 of 9: from 0.70; 291 of 300: from 0.944
    assertTrue(names.indexOf(supplier + " many") < names.indexOf(supplier + " few"), names + "");
    List<String> few = StatementCount.ofRequests(() -> got(ada, "suppliers"));
    assertTrue(few.size() < 12, few.toString());
  }

  @Test
  void aLotIsComparedWithEarlierOnesOfItsSupplierByTheReportsThatNameThem() {
    String[] ids =
        IntStream.rangeClosed(1, 5)
            .mapToObj(i -> ada.makes("lots", lot("B-" + i, 20, null, "2026-0" + i + "-01")))
            .toArray(String[]::new);
    got(ada, "lots/" + ids[0]).body("drift.burned", equalTo(false));
    double[] speeds = {400, 410, 390, 400, 300};
    for (int i = 0; i < speeds.length; i++) {
      burned(ada, " b-" + (i + 1), speeds[i]);
    }
    burned(People.join(), "B-5", 100);
    got(ada, "lots/" + ids[4])
        .body("drift.burned", equalTo(true))
        .body("drift.earlier", equalTo(4))
        .body("drift.change.lots", equalTo(4))
        // by hand: a quarter less speed is a third more dose
        .body("drift.change.ratio", closeTo(Math.pow(400.0 * 410 * 390 * 400, 0.25) / 300, 1e-9))
        .body("drift.change.low", closeTo(1.25, 0.03))
        .body("drift.noticed", nullValue());
    got(ada, "lots/" + ids[1]).body("drift.change", nullValue());
    got(ada, "lots").body("items.drift.burned", contains(true, true, true, true, true));
    // reports that did not change are not read again
    List<String> few = StatementCount.ofRequests(() -> got(ada, "lots"));
    for (int i = 0; i < 4; i++) {
      ada.makes("lots", lot("C-" + i, 20, 19, "2026-08-01"));
      burned(ada, "C-" + i, 300);
    }
    got(ada, "lots");
    List<String> many = StatementCount.ofRequests(() -> got(ada, "lots"));
    assertEquals(few.size(), many.size(), () -> String.join("\n", many));
    String last = got(ada, "lots").extract().path("items[0].id");
    got(ada, "lots/" + last)
        .body("drift.noticed.since", equalTo("2026-05-01"))
        .body("drift.noticed.ratio", closeTo(4.0 / 3, 0.02));
  }

  @Test
  void lotsThatMembersShareTellOfADriftTogether() {
    List<Person> members = Stream.generate(People::join).limit(3).toList();
    for (int i = 0; i < members.size(); i++) {
      for (int month = 1; month <= 4; month++) {
        String batch = "S" + i + month;
        Map<String, Object> sent = shared(lot(batch, 20, 19, "2026-0" + month + "-10"));
        members.get(i).makes("lots", sent);
        burned(members.get(i), batch, (400 + 5 * month - 40 * i) * (month > 2 ? 0.8 : 1));
      }
    }
    String id = ada.makes("lots", lot("A-1", 20, 19, "2026-03-01"));
    burned(ada, "A-1", 300);
    got(ada, "lots/" + id)
        .body("drift.others.members", equalTo(3))
        .body("drift.others.change.ratio", closeTo(1.22, 0.03))
        .body("drift.change", nullValue());
    String code =
        got(ada, "suppliers?q=" + supplier)
            .extract()
            .path("items.find { it.name == '" + supplier + "' }.code");
    got(ada, "suppliers/" + code)
        .body("drifts", hasSize(1))
        .body("drifts[0].blanks", equalTo("slate"))
        .body("drifts[0].members", equalTo(3))
        .body("drifts[0].lots", equalTo(12))
        .body("drifts[0].noticed[0].since", equalTo("2026-03"));
  }

  @Test
  void howManyToOrderAlsoUsesSharedLotsWhereOnesOwnAreFew() {
    for (Person member : List.of(People.join(), People.join(), People.join())) {
      member.makes("lots", shared(lot(null, 100, 90, null)));
    }
    Map<String, Object> asked =
        Map.of("lines", List.of(Map.of("pieces", 20)), "lots", supplier.toUpperCase());
    ada.asks()
        .body(asked)
        .post("/api/v1/lots/order")
        .then()
        .statusCode(200)
        .body("usable.from", equalTo("shared-lots"))
        .body("usable.lots", equalTo(0))
        .body("usable.sharedLots", equalTo(3))
        .body("usable.received", equalTo(300));
    for (int i = 0; i < 5; i++) {
      ada.makes("lots", lot(null, 10, 10, null));
    }
    ada.asks()
        .body(asked)
        .post("/api/v1/lots/order")
        .then()
        .body("usable.from", equalTo("lots"))
        .body("usable.sharedLots", nullValue())
        .body("usable.received", equalTo(50));
  }

  @Test
  void thePhotoOfALotIsItsOwnersAlone() throws IOException {
    String id = ada.makes("lots", lot("A", 20, null, null));
    String path = "/api/v1/lots/" + id + "/photo";
    ada.asks().get(path).then().statusCode(404);
    put(ada, path, Pictures.of(200, 100, "jpeg")).statusCode(200).body("width", equalTo(200));
    got(ada, "lots/" + id).body("photo.url", equalTo(path));
    ada.asks().get(path).then().statusCode(200).contentType("image/jpeg");
    put(ada, path, "no picture".getBytes()).statusCode(415);
    Person eve = People.join();
    eve.asks().get(path).then().statusCode(404);
    put(eve, path, Pictures.of(20, 10, "png")).statusCode(404);
    ada.asks().delete(path).then().statusCode(204);
    got(ada, "lots/" + id).body("photo", nullValue());
  }

  private static ValidatableResponse put(Person by, String path, byte[] picture) {
    return given()
        .header("Authorization", "Bearer " + by.token())
        .contentType("application/octet-stream")
        .body(picture)
        .put(path)
        .then();
  }
}
