package club.emberwell.api.grid;

import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
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
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;

/** Grids as programs keep them, judge them and print their sheets. */
@QuarkusTest
class GridApiTest extends GridsOnFelt {
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
        .body("items", hasSize(1))
        .body("items[0].id", equalTo(id));
    Person neighbour = People.join();
    neighbour.asks().get("/api/v1/grids/" + id).then().statusCode(404);
    neighbour.asks().get("/api/v1/grids").then().body("items", hasSize(0));
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
    ada.asks().get("/api/v1/grids").then().body("items", hasSize(0));
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

  @Test
  void withResultsItsReportIsPostedToo() {
    Map<String, Object> grid = byHand(List.of("40 %", "60 %"), List.of("20 mm/s", "30 mm/s"));
    List<List<String>> effects = new ArrayList<>();
    effects.add(List.of("right", "too-much"));
    effects.add(Arrays.asList("too-little", null));
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
        Map.of("effects", List.of(List.of("right", "too-much"), List.of("right", "right"))));
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
        "row,column,blank,x (mm),y (mm),side (mm),power (%),speed (mm/s),lineSpacing (mm),passes,dose (J/mm2),chance,left out,cautions",
        lines[0]);
    assertTrue(lines[6].startsWith("2,3,1,37,18.5,10,80,20,0.1,1,4,"), lines[6]);
  }
}
