package club.emberwell.api.quantity;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.notNullValue;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.http.ContentType;
import io.restassured.path.json.config.JsonPathConfig.NumberReturnType;
import java.util.Map;
import org.junit.jupiter.api.Test;

@QuarkusTest
class QuantityApiTest {
  // 1 in = 25.4 mm exactly (international inch): 12 in/s = 304.8 mm/s
  @Test
  void theParserHasItsOwnDoor() {
    given()
        .queryParam("dimension", "speed")
        .queryParam("text", "12 in/s")
        .get("/api/v1/quantities")
        .then()
        .statusCode(200)
        .body("value", equalTo(304.8f))
        .body("unit", equalTo("mm/s"))
        .body("written", equalTo("12 in/s"));
  }

  @Test
  void anAmbiguousTextIsAskedBack() {
    given()
        .queryParam("dimension", "lineSpacing")
        .queryParam("text", "1,000 mm")
        .get("/api/v1/quantities")
        .then()
        .statusCode(422)
        .body("errors[0].pointer", equalTo("/text"))
        .body("errors[0].readings", hasSize(2));
  }

  @Test
  void whatWasLeftOutOfATextIsSaid() {
    given()
        .queryParam("dimension", "lineSpacing")
        .queryParam("text", "0,08 mm hatch")
        .get("/api/v1/quantities")
        .then()
        .statusCode(200)
        .body("value", equalTo(0.08f))
        .body("written", equalTo("0,08 mm hatch"))
        .body("remarks[0].id", equalTo("words-left-out"))
        .body("remarks[0].detail", equalTo("Read as 0.08 mm. Left out: “hatch”."));
  }

  @Test
  void thePageForProgramsListsHowUnitsMayBeWritten() {
    String page = given().get("/help/api").then().statusCode(200).extract().asString();
    for (String spelling : new String[] {"мм/c", "pulgadas", "Zoll", "points", "pollici"}) {
      assertTrue(page.contains(spelling), spelling);
    }
  }

  @Test
  void anUnknownDimensionOrNoTextIsRefused() {
    given().queryParam("text", "1 mm").get("/api/v1/quantities").then().statusCode(400);
    given()
        .queryParam("dimension", "mood")
        .queryParam("text", "1 mm")
        .get("/api/v1/quantities")
        .then()
        .statusCode(400)
        .body("errors[0].pointer", equalTo("/dimension"));
    given().queryParam("dimension", "speed").get("/api/v1/quantities").then().statusCode(400);
  }

  // Worked example 2.1: 20 W, 1000 mm/s, 0.05 mm, 2 passes: 0.8 J/mm2
  @Test
  void theDoseCalculatorIsPublic() {
    given()
        .config(
            io.restassured.RestAssured.config()
                .jsonConfig(
                    io.restassured.config.JsonConfig.jsonConfig()
                        .numberReturnType(NumberReturnType.DOUBLE)))
        .contentType(ContentType.JSON)
        .body(
            Map.of(
                "laser",
                Map.of(
                    "source", "fibre",
                    "wavelength", "1064 nm",
                    "ratedPower", "20 W",
                    "motion", "galvo"),
                "process",
                "deep-engraving",
                "settings",
                Map.of("power", "100 %", "speed", "1 m/s", "lineSpacing", "0.05 mm", "passes", 2)))
        .post("/api/v1/dose")
        .then()
        .statusCode(200)
        .body("derived.arealDose.value", closeTo(0.8, 1e-12))
        .body("derived.arealDose.unit", equalTo("J/mm2"));
  }

  @Test
  void theCalculatorNamesWhatIsMissing() {
    given()
        .contentType(ContentType.JSON)
        .body(Map.of("process", "cut"))
        .post("/api/v1/dose")
        .then()
        .statusCode(422)
        .body("errors.pointer", hasItem("/laser"))
        .body("errors.pointer", hasItem("/settings"));
  }

  @Test
  void theVocabularyComesWithSynonymsAndCautionsAndIsSentOnce() {
    String tag =
        given()
            .get("/api/v1/materials")
            .then()
            .statusCode(200)
            .body("items.find { it.value == 'pvc' }.cautions[0].class", equalTo("ban"))
            .body("items.find { it.value == 'birch-plywood' }.synonyms", notNullValue())
            .extract()
            .header("ETag");
    given().header("If-None-Match", tag).get("/api/v1/materials").then().statusCode(304);
    for (String path : new String[] {"coatings", "colours", "defects"}) {
      given().get("/api/v1/" + path).then().statusCode(200).body("items", notNullValue());
    }
  }
}
