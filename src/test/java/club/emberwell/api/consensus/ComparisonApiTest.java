package club.emberwell.api.consensus;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.nullValue;

import club.emberwell.access.People;
import io.quarkus.test.junit.QuarkusTest;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;

@QuarkusTest
class ComparisonApiTest {

  @Test
  void twoSearchesShareAnAxisAndAnEmptyOneSaysSo() {
    String lot = "lot-" + UUID.randomUUID();
    People.join()
        .asks()
        .header("Idempotency-Key", UUID.randomUUID().toString())
        .body(
            Map.of(
                "laser",
                Map.of(
                    "source", "co2",
                    "wavelength", "10.6 um",
                    "ratedPower", "40 W",
                    "motion", "gantry"),
                "material",
                "slate",
                "process",
                "surface-engraving",
                // 40 W / (400 mm/s x 0.1 mm) = 1 J/mm2, physics example 2.1
                "settings",
                Map.of("power", "100 %", "speed", "400 mm/s", "lineSpacing", "0.1 mm"),
                "effect",
                "right",
                "lot",
                lot))
        .post("/api/v1/reports")
        .then()
        .statusCode(201);
    given()
        .queryParam("with", "q=" + lot, "q=" + lot + "&effect=too-much")
        .get("/api/v1/comparison")
        .then()
        .statusCode(200)
        .body("searches", hasSize(2))
        .body("searches[0].range.voices", equalTo(1))
        .body("searches[1].range", nullValue())
        .body("axes.arealDose.low", equalTo(1f))
        .body("axes.arealDose.unit", equalTo("J/mm2"));
  }

  @Test
  void tooFewTooManyAndUnreadableSearchesAreRefusedWithTheirPointer() {
    given().get("/api/v1/comparison").then().statusCode(400);
    given()
        .queryParam("with", "q=a", "q=b", "q=c", "q=d", "q=e")
        .get("/api/v1/comparison")
        .then()
        .statusCode(400)
        .body("errors[0].pointer", equalTo("/with"));
    given()
        .queryParam("with", "q=a", "source=warp")
        .get("/api/v1/comparison")
        .then()
        .statusCode(400)
        .body("errors[0].pointer", equalTo("/with/source"));
  }
}
