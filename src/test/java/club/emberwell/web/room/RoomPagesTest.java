package club.emberwell.web.room;

import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.web.frame.Browser;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Rooms, their air and their checks: on pages, in the inbox and over JSON. */
@QuarkusTest
class RoomPagesTest {
  private static final LocalDate TODAY = LocalDate.now(ZoneOffset.UTC);

  @Inject EntityManager db;

  private Person ada;
  private Browser browser;

  @BeforeEach
  void signIn() {
    ada = People.join();
    browser = Browser.of(ada);
  }

  private String main() {
    return browser.tidy().page().selectFirst("main").text();
  }

  // 600 m3/h: 9.137 m/s in a 6 in duct; 6 changes an hour in 100 m3: 23.03 and 46.05 min (CDC
  // table)
  @Test
  void aRoomTellsItsAir() {
    browser
        .get("/rooms/new")
        .send(
            "main form",
            Map.of(
                "name", "Shed",
                "flow", "600 m3/h",
                "duct", "6 in",
                "volume", "100 m3",
                "carried", "vapour-gas-smoke",
                "openingWidth", "300 mm",
                "openingHeight", "20 cm"));
    assertEquals(303, browser.status());
    browser.follow();
    String shown = main();
    for (String words :
        List.of(
            "9.137 m/s",
            "Within the usual speeds",
            "6 per hour",
            "23.1 min",
            "46.1 min",
            "600 m³/h",
            "2.778 m/s",
            "20 min",
            "Common practice, no source",
            "29 CFR 1910.252")) {
      assertTrue(shown.contains(words), words + " in " + shown);
    }
  }

  @Test
  void whatIsTypedWrongIsSaidAtItsFieldAndKept() {
    browser
        .get("/rooms/new")
        .send(
            "main form",
            Map.of("name", "Shed", "flow", "400", "length", "4 m", "checks.1.everyDays", "0"));
    assertEquals(422, browser.status());
    for (String field : List.of("flow", "width", "height", "checks.1.everyDays")) {
      assertFalse(browser.page().select("[id='at-" + field + "'] .field-error").isEmpty(), field);
    }
    assertEquals("4 m", browser.field("length"));
    assertEquals("0", browser.field("checks.1.everyDays"));
    assertTrue(
        browser.page().selectFirst("main details:has(#at-checks\\.1\\.everyDays)").hasAttr("open"));
  }

  @Test
  void anOverdueCheckStandsOnTheBenchAndInTheInboxUntilItIsDone() {
    String id =
        ada.makes(
            "rooms",
            Map.of(
                "name",
                "Shed",
                "checks",
                List.of(
                    done("extinguisher", TODAY.minusDays(30)),
                    done("smoke-detector", TODAY.minusDays(29)),
                    done("extraction", TODAY),
                    Map.of("check", "co-detector", "here", false))));
    assertTrue(browser.get("/bench").page().text().contains("Fire extinguisher in Shed"));
    assertFalse(main().contains("Smoke detector in Shed"));
    assertTrue(browser.get("/inbox").page().text().contains("Fire extinguisher in Shed"));
    browser.get("/rooms/" + id);
    assertTrue(main().contains("Fire extinguisher: check now"), main());
    browser.send("form[action$=/extinguisher]", Map.of());
    assertEquals(303, browser.status());
    browser.follow();
    assertFalse(main().contains("check now"), main());
    assertFalse(browser.get("/inbox").page().text().contains("Fire extinguisher in Shed"));
    assertFalse(browser.get("/bench").page().text().contains("Fire extinguisher in Shed"));
  }

  private static Map<String, Object> done(String check, LocalDate last) {
    return Map.of("check", check, "lastOn", last.toString());
  }

  /** Who joined today is told of what comes due later, once, until it was read. */
  @Test
  void aCheckThatCameDueIsNewInTheInboxUntilItWasRead() {
    String id =
        ada.makes(
            "rooms",
            Map.of("name", "Shed", "checks", List.of(done("extinguisher", TODAY.minusDays(30)))));
    ada.asks().get("/api/v1/inbox").then().body("newChecks", equalTo(0));
    readUntil(TODAY.minusDays(3));
    ada.asks().get("/api/v1/inbox").then().body("newChecks", equalTo(1));
    browser.get("/inbox").send("form[action=/inbox/read]", Map.of());
    ada.asks().get("/api/v1/inbox").then().body("newChecks", equalTo(0));
    assertTrue(browser.get("/inbox").page().text().contains("Fire extinguisher in Shed"));
    ada.asks().delete("/api/v1/rooms/" + id).then().statusCode(204);
    assertFalse(browser.get("/inbox").page().text().contains("Fire extinguisher in Shed"));
  }

  private void readUntil(LocalDate day) {
    String sql =
        "insert into told (member_id, read_to) values ('%s', '%s') on conflict (member_id)"
                .formatted(ada.id(), day)
            + " do update set read_to = excluded.read_to";
    QuarkusTransaction.requiringNew().run(() -> db.createNativeQuery(sql).executeUpdate());
  }

  @Test
  void machinesStandInARoomAndOnlyOnesOwn() {
    Map<String, Object> laser =
        Map.of("name", "Tube", "source", "co2", "ratedPower", "40 W", "motion", "gantry");
    String own = ada.makes("machines", laser);
    String other = People.join().makes("machines", laser);
    String id = ada.makes("rooms", Map.of("name", "Shed", "machines", List.of(own)));
    assertTrue(browser.get("/rooms/" + id).page().text().contains("Tube"));
    browser.get("/rooms/" + id + "/edit");
    assertEquals(own, browser.page().selectFirst("input[name=machines][checked]").val());
    ada.asks()
        .header("If-Match", "\"1\"")
        .body(Map.of("name", "Shed", "machines", List.of(other)))
        .put("/api/v1/rooms/" + id)
        .then()
        .statusCode(422)
        .body("errors.pointer", contains("/machines"));
  }

  @Test
  void programsKeepRoomsToo() {
    Map<String, Object> room =
        Map.of(
            "id",
            UUID.randomUUID(),
            "name",
            "Shed",
            "length",
            "20 ft",
            "width",
            "15 ft",
            "height",
            "9 ft",
            "flow",
            "400 cfm");
    String id = ada.makes("rooms", room);
    assertEquals(id, ada.makes("rooms", room));
    String path = "/api/v1/rooms/" + id;
    // 400 cfm in 20 x 15 x 9 ft: 8.889 changes (formula of a USAF bioenvironmental course text)
    Float changes = ada.asks().get(path).then().extract().path("air.airChanges");
    assertEquals(8.889, changes, 0.0005);
    ada.asks()
        .get(path + "/checks")
        .then()
        .body("items", hasSize(5))
        .body("items[0].check", equalTo("fire-watch"))
        .body("items[0].due", equalTo(false))
        .body("items[1].everyDays", equalTo(30))
        .body("items[1].lastOn", nullValue())
        .body("items[1].due", equalTo(true));
    mark(path, Map.of("check", "extinguisher"), 200)
        .body("checks[1].lastOn", equalTo(TODAY.toString()))
        .body("checks[1].dueOn", equalTo(TODAY.plusDays(30).toString()))
        .body("version", equalTo(2));
    mark(path, Map.of("check", "extinguisher"), 200).body("version", equalTo(2));
    mark(path, Map.of("check", "ladder"), 422).body("errors.pointer", contains("/check"));
    mark(path, Map.of("check", "extinguisher", "on", "2126-01-01"), 422)
        .body("errors.pointer", contains("/on"));
    ada.asks().body(room).put(path).then().statusCode(428);
    People.join().asks().get(path).then().statusCode(404);
    ada.asks().delete(path).then().statusCode(204);
    assertNull(ada.asks().get(path).path("name"));
  }

  private io.restassured.response.ValidatableResponse mark(
      String path, Map<String, Object> body, int status) {
    return ada.asks()
        .header("Idempotency-Key", UUID.randomUUID().toString())
        .body(body)
        .post(path + "/checks")
        .then()
        .statusCode(status);
  }
}
