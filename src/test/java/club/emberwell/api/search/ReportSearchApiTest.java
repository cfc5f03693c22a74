package club.emberwell.api.search;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.greaterThanOrEqualTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasItems;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.search.index.SearchIndex;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The search over HTTP, from posting a report to finding it. */
@QuarkusTest
class ReportSearchApiTest {
  private static final String REPORTS = "/api/v1/reports";

  @Inject SearchIndex index;
  private Person ada;

  @BeforeEach
  void join() {
    ada = People.join();
  }

  private static Map<String, Object> report(String material, String speed) {
    Map<String, Object> body = new LinkedHashMap<>();
    body.put(
        "laser",
        Map.of(
            "source", "co2",
            "wavelength", "10.6 um",
            "ratedPower", "40 W",
            "motion", "gantry",
            "regime", "cw"));
    body.put("material", material);
    body.put("process", "surface-engraving");
    body.put("settings", Map.of("power", "50 %", "speed", speed, "lineSpacing", "0.1 mm"));
    body.put("effect", "right");
    return body;
  }

  private String post(Map<String, Object> body) {
    return ada.asks()
        .header("Idempotency-Key", UUID.randomUUID().toString())
        .body(body)
        .post(REPORTS)
        .then()
        .statusCode(201)
        .extract()
        .path("id");
  }

  private ValidatableResponse mine(String parameters) {
    return given().get(REPORTS + "?member=" + ada.handle() + parameters).then();
  }

  @Test
  void aPostedReportIsFoundByTheVeryNextSearch() {
    String id = post(report("slate", "300 mm/s"));
    mine("")
        .statusCode(200)
        .body("total", equalTo(1))
        .body("trials", equalTo(1))
        .body("hits.id", contains(id))
        .body("hits[0].matchingTrials", contains(0))
        .body("hits[0].settings.speed.value", equalTo(300))
        .body("facets.material.find { it.value == 'slate' }.count", equalTo(1))
        .body("facets.member.find { it.selected }.value", equalTo(ada.handle()));
  }

  @Test
  void aWithdrawnReportIsFoundNoMore() {
    String id = post(report("slate", "300 mm/s"));
    ada.asks().delete(REPORTS + "/" + id).then().statusCode(204);
    mine("").body("total", equalTo(0)).body("hits", hasSize(0));
  }

  @Test
  void repeatedParametersMeanOrAndDifferentOnesAnd() {
    String slate = post(report("slate", "300 mm/s"));
    String walnut = post(report("walnut", "12 in/s"));
    post(report("birch plywood", "700 mm/s"));
    mine("&material=slate&material=walnut")
        .body("hits.id", hasItems(slate, walnut))
        .body("total", equalTo(2))
        .body("facets.material.find { it.value == 'birch-plywood' }.count", equalTo(1));
    mine("&material=slate&material=walnut&speedMin=12 in/s").body("hits.id", contains(walnut));
    mine("&material=wood").body("hits.id", not(hasItem(slate))).body("total", equalTo(2));
  }

  @Test
  void anEmptyResultNamesAWayOut() {
    post(report("slate", "300 mm/s"));
    mine("&material=walnut")
        .body("total", equalTo(0))
        .body("suggestions.kind", hasItem("drop-facet"))
        .body("suggestions[0].total", greaterThanOrEqualTo(1));
  }

  @Test
  void whatCannotBeReadIsRefusedWithItsPointer() {
    given()
        .get(REPORTS + "?colur=red")
        .then()
        .statusCode(400)
        .contentType("application/problem+json")
        .body("errors.pointer", contains("/colur"));
    given()
        .get(REPORTS + "?source=steam&page=-1")
        .then()
        .statusCode(400)
        .body("errors.pointer", contains("/source", "/page"));
    given()
        .get(REPORTS + "?speedMin=300")
        .then()
        .statusCode(422)
        .body("errors.pointer", contains("/speedMin"))
        .body("errors[0].readings", not(hasSize(0)));
  }

  @Test
  void theIndexHoldsWhatTheDatabaseHolds() {
    post(report("slate", "300 mm/s"));
    assertTrue(index.reconcile());
    given()
        .get("/q/health/ready")
        .then()
        .statusCode(200)
        .body("checks.name", hasItem("search index"));
    given().get("/q/metrics").then().statusCode(200).body(containsString("emberwell_index_lag"));
  }

  @Test
  void theApiDescriptionListsEveryParameter() {
    given()
        .accept("application/json")
        .get("/api/v1/openapi.json")
        .then()
        .statusCode(200)
        .body(
            "paths.'/api/v1/reports'.get.parameters.name",
            hasItems("q", "material", "speedMin", "postedBefore", "near", "sort", "page", "size"));
  }
}
