package club.emberwell.api.grid;

import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.everyItem;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.lessThanOrEqualTo;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.IntStream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.w3c.dom.Element;

/**
 * Nine members with a 10 W diode on felt: 0.5 J/mm² too little, 1 to 2 right, 4 too much, all at 50
 * % and 0.1 mm.
 */
@QuarkusTest
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class GridApiTest {
  private static final String MATERIAL = "felt";
  private boolean posted;
  private Person ada;

  @BeforeEach
  void membersPost() {
    ada = People.join();
    if (posted) {
      return;
    }
    posted = true;
    for (int member = 0; member < 9; member++) {
      Person person = People.join();
      double off = 1 + (member - 4) * 0.03;
      post(person, 50 / (0.5 * off), "too little");
      post(person, 50 / (1.1 * off), "right");
      post(person, 50 / (1.8 * off), "right");
      post(person, 50 / (4 * off), "too much");
    }
  }

  private static Map<String, Object> laser() {
    return Map.of(
        "source", "diode",
        "wavelength", "455 nm",
        "ratedPower", "10 W",
        "motion", "gantry",
        "beamDiameter", "80 um");
  }

  private static void post(Person person, double speed, String effect) {
    Map<String, Object> report = new HashMap<>();
    report.put("laser", laser());
    report.put("material", MATERIAL);
    report.put("process", "surface engraving");
    report.put(
        "settings",
        Map.of(
            "power",
            "50 %",
            "speed",
            Math.round(speed * 10) / 10.0 + " mm/s",
            "lineSpacing",
            "0.1 mm"));
    report.put("effect", effect);
    keyed(person, report).statusCode(201);
  }

  private static ValidatableResponse keyed(Person person, Map<String, Object> report) {
    return person
        .asks()
        .header("Idempotency-Key", "\"" + UUID.randomUUID() + "\"")
        .body(report)
        .post("/api/v1/reports")
        .then();
  }

  private static Map<String, Object> asked() {
    Map<String, Object> grid = new HashMap<>();
    grid.put("laser", laser());
    grid.put("material", MATERIAL);
    grid.put("process", "surface engraving");
    return grid;
  }

  private static Map<String, Object> byHand(Object powers, Object speeds) {
    Map<String, Object> grid = asked();
    grid.put("settings", Map.of("lineSpacing", "0.1 mm"));
    grid.put(
        "axes",
        Map.of(
            "across", Map.of("setting", "power", "values", powers),
            "down", Map.of("setting", "speed", "values", speeds)));
    return grid;
  }

  private static List<String> speeds(int count) {
    return IntStream.rangeClosed(1, count).mapToObj(i -> i * 10 + " mm/s").toList();
  }

  private ValidatableResponse plan(Map<String, Object> grid) {
    return ada.asks().body(grid).post("/api/v1/grids/plan").then();
  }

  private ValidatableResponse keep(Map<String, Object> grid) {
    return ada.asks()
        .header("Idempotency-Key", UUID.randomUUID().toString())
        .body(grid)
        .post("/api/v1/grids")
        .then();
  }

  @Test
  void aPlanFromTheRangeCoversBandAndWindowInEqualRatios() {
    ValidatableResponse planned = plan(asked()).statusCode(200);
    planned
        .body("id", nullValue())
        .body("plan.axes.across.setting", equalTo("power"))
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

  private static double number(ValidatableResponse answer, String path) {
    return ((Number) answer.extract().path(path)).doubleValue();
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

  private static Map<String, Object> axis(String setting, String... values) {
    return Map.of("setting", setting, "values", List.of(values));
  }

  private static void refused(ValidatableResponse answer, String pointer, String words) {
    answer
        .statusCode(422)
        .contentType("application/problem+json")
        .body("errors.pointer", hasItem(pointer))
        .body("errors.find { it.pointer == '" + pointer + "' }.detail", containsString(words));
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
        "cell|8|/blank/cell|unit",
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
  void aGridIsKeptOnceChangedByItsVersionAndSeenByNobodyElse() {
    Map<String, Object> grid = asked();
    String id = UUID.randomUUID().toString();
    grid.put("id", id);
    grid.put("name", "Felt, first try");
    keep(grid)
        .statusCode(201)
        .header("ETag", "\"1\"")
        .header("Location", containsString("/api/v1/grids/" + id))
        .body("name", equalTo("Felt, first try"))
        .body("report", nullValue());
    keep(grid).statusCode(201).body("id", equalTo(id)).body("version", equalTo(1));
    Map<String, Object> other = new HashMap<>(grid);
    other.put("name", "Another");
    keep(other).statusCode(422).body("errors.pointer", hasItem("/id"));
    ada.asks()
        .get("/api/v1/grids")
        .then()
        .statusCode(200)
        .body("grids", hasSize(1))
        .body("grids[0].id", equalTo(id));
    Person neighbour = People.join();
    neighbour.asks().get("/api/v1/grids/" + id).then().statusCode(404);
    neighbour.asks().get("/api/v1/grids").then().body("grids", hasSize(0));
    other.remove("id");
    ada.asks().body(other).put("/api/v1/grids/" + id).then().statusCode(428);
    ada.asks()
        .header("If-Match", "\"1\"")
        .body(other)
        .put("/api/v1/grids/" + id)
        .then()
        .statusCode(200)
        .header("ETag", "\"2\"")
        .body("name", equalTo("Another"));
    ada.asks()
        .header("If-Match", "\"1\"")
        .body(other)
        .put("/api/v1/grids/" + id)
        .then()
        .statusCode(412);
    ada.asks().delete("/api/v1/grids/" + id).then().statusCode(204);
    ada.asks().get("/api/v1/grids/" + id).then().statusCode(404);
    ada.asks().get("/api/v1/grids").then().body("grids", hasSize(0));
  }

  /** A stored grid keeps its values whatever the range becomes. */
  @Test
  void whatIsKeptAreTheValuesThatWerePlanned() {
    ValidatableResponse kept = keep(asked()).statusCode(201);
    List<Object> across = kept.extract().path("plan.axes.across.values.value");
    String id = kept.extract().path("id");
    Map<String, Object> again =
        ada.asks().get("/api/v1/grids/" + id).then().extract().path("written");
    assertEquals(across.size(), ((List<?>) path(again, "axes", "across", "values")).size());
    plan(again).statusCode(200).body("plan.axes.across.values.value", equalTo(across));
  }

  private static Object path(Object from, String... names) {
    Object at = from;
    for (String name : names) {
      at = ((Map<?, ?>) at).get(name);
    }
    return at;
  }

  @Test
  void withResultsItsReportIsPostedToo() {
    Map<String, Object> grid = byHand(List.of("40 %", "60 %"), List.of("20 mm/s", "30 mm/s"));
    List<List<String>> effects = new ArrayList<>();
    effects.add(List.of("right", "too much"));
    effects.add(Arrays.asList("too little", null));
    grid.put("results", Map.of("effects", effects));
    String report =
        keep(grid).statusCode(201).body("report", notNullValue()).extract().path("report");
    ada.asks().get("/api/v1/reports/" + report).then().statusCode(200).body("trials", hasSize(3));
  }

  @Test
  void onceJudgedTheTestsOfAGridStay() {
    Map<String, Object> grid = byHand(List.of("40 %", "60 %"), List.of("20 mm/s", "30 mm/s"));
    Map<String, Object> judged = new HashMap<>(grid);
    judged.put(
        "results",
        Map.of("effects", List.of(List.of("right", "too much"), List.of("right", "right"))));
    ValidatableResponse kept = keep(judged).statusCode(201);
    String id = kept.extract().path("id");
    int version = kept.extract().path("version");
    Map<String, Object> other = byHand(List.of("40 %", "70 %"), List.of("20 mm/s", "30 mm/s"));
    refused(
        ada.asks()
            .header("If-Match", "\"" + version + "\"")
            .body(other)
            .put("/api/v1/grids/" + id)
            .then(),
        "/axes",
        "has results");
    grid.put("name", "Named later");
    ada.asks()
        .header("If-Match", "\"" + version + "\"")
        .body(grid)
        .put("/api/v1/grids/" + id)
        .then()
        .statusCode(200);
  }

  @Test
  void theSheetIsInTrueMillimetresAndTheTableSaysTheSame() throws Exception {
    Map<String, Object> grid = byHand(List.of("40 %", "60 %", "80 %"), speeds(2));
    grid.put("blank", Map.of("cell", "10 mm", "gap", "2.5 mm"));
    String id = keep(grid).statusCode(201).extract().path("id");
    String svg =
        ada.asks()
            .get("/api/v1/grids/" + id + "/sheet.svg")
            .then()
            .statusCode(200)
            .extract()
            .asString();
    Element root =
        DocumentBuilderFactory.newInstance()
            .newDocumentBuilder()
            .parse(new ByteArrayInputStream(svg.getBytes(StandardCharsets.UTF_8)))
            .getDocumentElement();
    // 3 x 10 + 2 x 2.5, 10 of labels, 2 x 2 of margins; 2 x 10 + 2.5, 4 + 5, 2 x 2
    assertEquals("49.00mm", root.getAttribute("width"));
    assertEquals("35.50mm", root.getAttribute("height"));
    assertEquals("0 0 49.00 35.50", root.getAttribute("viewBox"));
    long cells =
        svg.lines().filter(line -> line.contains("width=\"10.00\" height=\"10.00\"")).count();
    assertEquals(6, cells);
    assertTrue(svg.matches("(?s).*>[0-9A-Z]{3}-[0-9A-Z]<.*"), "no tag");
    String csv =
        ada.asks()
            .get("/api/v1/grids/" + id + "/sheet.csv")
            .then()
            .statusCode(200)
            .extract()
            .asString();
    String[] lines = csv.split("\r\n");
    assertEquals(7, lines.length);
    assertEquals(
        "row,column,blank,x (mm),y (mm),side (mm),power (%),speed (mm/s),lineSpacing (mm),passes,dose (J/mm2),chance,left out",
        lines[0]);
    assertTrue(lines[6].startsWith("2,3,1,37,18.5,10,80,20,0.1,1,4,"), lines[6]);
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
