package club.emberwell.api.catalog;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.everyItem;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasKey;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.startsWith;

import io.quarkus.test.junit.QuarkusTest;
import org.junit.jupiter.api.Test;

@QuarkusTest
class HazardCardApiTest {
  @Test
  void aCardSaysWhatIsGivenOffAndWhoSaysSo() {
    given()
        .get("/api/v1/materials/pom/hazards")
        .then()
        .statusCode(200)
        .body("kind", equalTo("material"))
        .body("verdict", equalTo("special-care"))
        .body("givesOff.substance", hasItem("formaldehyde"))
        .body("extraction", hasItem("Working extraction to the outside."))
        .body("cautions[0].id", equalTo("pom-formaldehyde"))
        .body("cautions[0].evidence.disputed", equalTo(true))
        .body("cautions[0].sources.says", hasItem("approves it"))
        .body("cautions[0].sources", everyItem(hasKey("jurisdiction")))
        .body("limits[0].jurisdiction", equalTo("United States"));
  }

  @Test
  void aBanForSomeWorkSaysForWhich() {
    given()
        .get("/api/v1/materials/polycarbonate/hazards")
        .then()
        .statusCode(200)
        .body("verdict", equalTo("partly-prohibited"))
        .body("cautions[0].only.processes", hasItem("cut"))
        .body("cautions[0].only.thicknessAboveMm", equalTo(1.0f));
  }

  @Test
  void anUnknownPlasticSaysHowToFindOut() {
    given()
        .get("/api/v1/materials/unknown-plastic/hazards")
        .then()
        .statusCode(200)
        .body("verdict", equalTo("prohibited-until-identified"))
        .body("extraction", hasSize(0))
        .body("findOut[0]", startsWith("First ask the supplier for the safety data sheet"));
  }

  @Test
  void coatingsHaveTheirsAndWhatIsUnchangedIsNotSentAgain() {
    String tag =
        given()
            .get("/api/v1/coatings/powder-coat/hazards")
            .then()
            .statusCode(200)
            .body("kind", equalTo("coating"))
            .body("cautions.id", hasItem("coatings-unknown-pigments"))
            .extract()
            .header("ETag");
    given()
        .header("If-None-Match", tag)
        .get("/api/v1/coatings/powder-coat/hazards")
        .then()
        .statusCode(304);
  }

  @Test
  void whatIsNotInTheListHasNoCard() {
    given()
        .get("/api/v1/materials/zorblax/hazards")
        .then()
        .statusCode(404)
        .contentType("application/problem+json")
        .body("status", equalTo(404));
  }
}
