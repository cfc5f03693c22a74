package club.emberwell.api.grid;

import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.everyItem;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.lessThanOrEqualTo;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Plans as programs ask for them: nothing is kept. */
@QuarkusTest
class GridPlanApiTest extends GridsOnFelt {
  @Test
  void aPlanFromTheRangeCoversBandAndWindowInEqualRatios() {
    ValidatableResponse planned = plan(asked()).statusCode(200);
    planned
        .body("id", nullValue())
        .body("plan.axes.across.setting", equalTo("powerPercent"))
        .body("plan.axes.down.setting", equalTo("speed"))
        .body("plan.settings.lineSpacing.value", equalTo(0.1f))
        .body("plan.cover.basis", equalTo("range"))
        .body("plan.cover.whole", equalTo(true))
        .body("plan.cover.inside", equalTo(0.8f))
        .body("plan.cells.size()", greaterThan(5))
        .body("plan.cells.chance", everyItem(notNullValue()))
        .body("plan.burn.time.value", notNullValue())
        .body("written.axes.across.values", notNullValue())
        .body("cautions", notNullValue());
    double low = number(planned, "plan.cover.low");
    double high = number(planned, "plan.cover.high");
    assertTrue(low <= 1 && low > 0.4, "from " + low);
    assertTrue(high >= 2 && high < 6, "to " + high);
    assertTrue(number(planned, "plan.cover.step") < 1.25);
  }

  @Test
  void neverMoreTestsThanAsked() {
    Map<String, Object> grid = asked();
    grid.put("axes", Map.of("resolution", 1.05, "most", 9));
    plan(grid).statusCode(200).body("plan.cells.size()", lessThanOrEqualTo(9));
  }

  @Test
  void oneSideByHandAndTheOtherFromTheRange() {
    Map<String, Object> grid = asked();
    grid.put(
        "axes",
        Map.of("across", Map.of("setting", "power", "from", "40 %", "to", "80 %", "steps", 3)));
    plan(grid)
        .statusCode(200)
        .body("plan.axes.across.values.value", equalTo(List.of(40, 56, 80)))
        .body("plan.cover.whole", equalTo(true));
  }

  @Test
  void aCellTheMachineCannotDoIsLeftOutWithTheReason() {
    Map<String, Object> machine = new HashMap<>(laser());
    machine.put("name", "Slow");
    machine.put("maxSpeed", "25 mm/s");
    String id =
        ada.asks()
            .header("Idempotency-Key", UUID.randomUUID().toString())
            .body(machine)
            .post("/api/v1/machines")
            .then()
            .statusCode(201)
            .extract()
            .path("id");
    Map<String, Object> grid = byHand(List.of("40 %", "60 %"), List.of("20 mm/s", "30 mm/s"));
    grid.remove("laser");
    grid.put("machine", id);
    plan(grid)
        .statusCode(200)
        .body("plan.tests", equalTo(2))
        .body("plan.cells[0].leftOut", nullValue())
        .body("plan.cells[2].leftOut", containsString("highest speed of 25 mm/s"))
        .body("plan.cells[0].dose.value", equalTo(2))
        .body("plan.cells[0].dose.unit", equalTo("J/mm2"));
    grid.put(
        "axes", Map.of("across", axis("power", "40 %", "60 %"), "down", axis("speed", "30 mm/s")));
    refused(plan(grid), "/axes", "can do none");
  }

  @Test
  void oneTestIsNoGridAndAHundredTimesAHundredIsTooMany() {
    refused(plan(byHand(List.of("40 %"), List.of("20 mm/s"))), "/axes", "One test is no grid");
    refused(plan(byHand(List.of("40 %"), speeds(100))), "/axes/down/values", "At most 20 values");
    Map<String, Object> grid = byHand(List.of("40 %"), speeds(3));
    grid.put(
        "axes",
        Map.of(
            "across", Map.of("setting", "power", "from", "1 %", "to", "100 %", "steps", 100),
            "down", axis("speed", "20 mm/s")));
    refused(plan(grid), "/axes/across/steps", "from 1 to 20");
    plan(byHand(List.of("40 %"), speeds(20))).statusCode(200).body("plan.cells", hasSize(20));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "power|40 %; 40 %|speed|20 mm/s|/axes/across/values/1|twice",
        "power|40 %; 60 %; 50 %|speed|20 mm/s|/axes/across/values/2|in order",
        "power|40 %; 6 W|speed|20 mm/s|/axes/across/values/1|in one unit",
        "power|40 %; 120 %|speed|20 mm/s|/axes/across/values/1|ends at 100 %",
        "power|40 %; 60|speed|20 mm/s|/axes/across/values/1|percent or",
        "power|40 %; 60 %|power|20 %|/axes/down/setting|two different",
        "brightness|40 %; 60 %|speed|20 mm/s|/axes/across/setting|Choose one of",
        "airAssist|1; 2|speed|20 mm/s|/axes/across/setting|Choose one of",
        "repetitionRate|20 kHz; 30 kHz|speed|20 mm/s|/axes/across/setting|no frequency",
        "passes|1; 2.5|speed|20 mm/s|/axes/across/values/1|whole number"
      })
  void whatIsWrongWithAnAxisIsSaidAtItsField(
      String across, String columns, String down, String rows, String pointer, String words) {
    Map<String, Object> grid = asked();
    grid.put("settings", Map.of("lineSpacing", "0.1 mm", "power", "50 %"));
    grid.put(
        "axes",
        Map.of("across", axis(across, columns.split("; ")), "down", axis(down, rows.split("; "))));
    refused(plan(grid), pointer, words);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "cell|0.1 mm|/blank/cell|not between",
        "cell|2|/blank/cell|unit",
        "width|15 mm|/blank/width|needs 22.0 mm",
        "diameter|3 mm|/blank/diameter|needs 22.0 mm"
      })
  void whatIsWrongWithThePieceIsSaidAtItsField(
      String field, String text, String pointer, String words) {
    Map<String, Object> grid = byHand(List.of("40 %", "60 %"), speeds(2));
    grid.put("blank", Map.of(field, text));
    refused(plan(grid), pointer, words);
  }

  @Test
  void prohibitedWorkPlansNothing() {
    Map<String, Object> grid = byHand(List.of("40 %", "60 %"), speeds(2));
    grid.put("material", "PVC");
    plan(grid).statusCode(422).contentType("application/problem+json").body("plan", nullValue());
    keep(grid).statusCode(422);
  }

  @Test
  void whatNobodyKnowsMustBeGivenByHand() {
    Map<String, Object> grid = asked();
    grid.put("material", "grandmother's curtain");
    refused(plan(grid), "/axes", "by hand");
    Map<String, Object> own = new HashMap<>(grid);
    own.put("settings", Map.of("power", "50 %", "speed", "50 mm/s", "lineSpacing", "0.1 mm"));
    plan(own)
        .statusCode(200)
        .body("plan.cover.basis", equalTo("by-hand"))
        .body("plan.cells.chance", everyItem(nullValue()));
  }

  @Test
  void aRoundPieceTakesWhatStaysInFocusAndMoreBlanks() {
    Map<String, Object> grid = byHand(List.of("40 %", "60 %", "80 %"), speeds(2));
    grid.put("blank", Map.of("diameter", "74 mm"));
    // 80 um at 455 nm with M² 8: 1.381 mm of fall, a chord of 20.03 mm: not one cell of 8 mm
    refused(plan(grid), "/blank/diameter", "20.0 mm");
    grid.put("blank", Map.of("diameter", "74 mm", "cell", "5 mm", "gap", "1 mm"));
    ValidatableResponse round =
        plan(grid)
            .statusCode(200)
            .body("plan.layout.parts.columns", equalTo(1))
            .body("plan.layout.parts.blanks", equalTo(3));
    assertEquals(20.03, number(round, "plan.layout.room.width"), 0.01);
    grid.put("blank", Map.of("diameter", "74 mm", "rotary", true));
    assertNotNull(plan(grid).statusCode(200).body("plan.layout.parts.blanks", equalTo(1)));
  }
}
