package club.emberwell.api.grid;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasKey;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.startsWith;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.catalog.Ciede2000;
import club.emberwell.catalog.Lab;
import club.emberwell.grid.PlannedGrids;
import club.emberwell.grid.photo.DrawnGrid;
import club.emberwell.grid.photo.PhotoPlan;
import club.emberwell.report.photo.Pictures;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.hamcrest.Description;
import org.hamcrest.Matcher;
import org.hamcrest.TypeSafeMatcher;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Results and photo of a grid of two rows and three columns. */
@QuarkusTest
class GridResultApiTest {
  private static final PhotoPlan LYING = new PhotoPlan(2, 3, 8, 2);

  @Inject PlannedGrids grids;

  private Person ada;
  private String grid;

  @BeforeEach
  void plan() {
    ada = People.join();
    grid = grids.plan(ada, 3);
  }

  private static Map<String, Object> results(List<List<String>> effects) {
    Map<String, Object> sent = new HashMap<>();
    sent.put("effects", effects);
    return sent;
  }

  /** Four of six judged, the right one in the middle of the upper row the best. */
  private static Map<String, Object> judged() {
    Map<String, Object> sent =
        results(
            List.of(
                Arrays.asList("too-little", "right", "too-much"),
                Arrays.asList(null, "right", null)));
    sent.put("best", Map.of("row", 0, "column", 1));
    sent.put(
        "cells",
        List.of(
            Map.of("row", 0, "column", 2, "defects", List.of("halo")),
            Map.of("row", 1, "column", 1, "quality", 3)));
    sent.put("notes", "Wiped with oil.");
    return sent;
  }

  private ValidatableResponse send(int version, Map<String, Object> sent) {
    return ada.asks()
        .header("If-Match", "\"" + version + "\"")
        .body(sent)
        .put("/api/v1/grids/" + grid + "/results")
        .then();
  }

  private int reports() {
    return given().get("/api/v1/reports?member=" + ada.handle()).then().extract().path("total");
  }

  private ValidatableResponse report(String id) {
    return given().get("/api/v1/reports/" + id).then().statusCode(200);
  }

  @Test
  void resultsBecomeOneReportWithTheSettingsAsPlanned() {
    String report =
        send(1, judged())
            .statusCode(200)
            .header("ETag", "\"2\"")
            .body("judged", equalTo(4))
            .body("tests", equalTo(6))
            .body("best", equalTo(Map.of("row", 0, "column", 1)))
            .body("cells", hasSize(6))
            .body("cells[1].effect", equalTo("right"))
            .body("cells[1].quality", equalTo(5))
            .body("cells[1].settings.powerPercent.value", equalTo(40))
            .body("cells[1].dose.value", equalTo(2))
            .body("cells[2].defects", hasItem("halo"))
            .body("cells[3]", not(hasKey("effect")))
            .body("cells[3]", not(hasKey("colour")))
            .extract()
            .path("report");
    report(report)
        .body("trials", hasSize(4))
        .body("trials[0].row", equalTo(0))
        .body("trials[0].settings.speed.value", equalTo(20))
        .body("trials[0].settings.lineSpacing.value", equalTo(0.1f))
        .body("trials[3].column", equalTo(1))
        .body("trials[3].quality", equalTo(3))
        .body("notes", equalTo("Wiped with oil."));
    given()
        .get("/api/v1/reports?member=" + ada.handle() + "&effect=right")
        .then()
        .body("total", equalTo(1));
  }

  @Test
  void theSameSentTwiceIsOneReportAndOtherResultsAreItsNextVersion() {
    String report = send(1, judged()).statusCode(200).extract().path("report");
    // as after an answer that got lost: based on the version before
    send(1, judged()).statusCode(200).body("report", equalTo(report)).body("version", equalTo(2));
    report(report).header("ETag", startsWith("\"1-"));
    Map<String, Object> other = judged();
    other.put("best", null);
    other.put("cells", null);
    send(1, other).statusCode(412);
    send(2, other).statusCode(200).body("report", equalTo(report)).body("best", equalTo(null));
    report(report).header("ETag", startsWith("\"2-")).body("trials[1]", not(hasKey("quality")));
    given().get("/api/v1/reports/" + report + "/history").then().body("items", hasSize(2));
    assertEquals(1, reports());
    ada.asks().body(judged()).put("/api/v1/grids/" + grid + "/results").then().statusCode(428);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          {}                                                                    | /effects
          {"effects": []}                                                       | /effects
          {"effects": [[null, null, null], [null, null, null]]}                 | /effects
          {"effects": [["right", null, null]]}                                  | /effects
          {"effects": [["right", null, null], [null, null]]}                    | /effects/1
          {"effects": [["right", null, null, null], [null, null, null]]}        | /effects/0
          {"effects": [["splendid", null, null], [null, null, null]]}           | /effects/0/0
          {"effects": [["right", null, null], [null, null, null]], "best": {"row": 1, "column": 0}} | /best
          {"effects": [["too-much", null, null], [null, null, null]], "best": {"row": 0, "column": 0}} | /best
          {"effects": [["right", null, null], [null, null, null]], "best": {"row": 2, "column": 0}} | /best
          {"effects": [["right", null, null], [null, null, null]], "best": {"row": 0}} | /best
          {"effects": [["right", "right", null], [null, null, null]], "best": {"row": 0, "column": 0}, "cells": [{"row": 0, "column": 1, "quality": 5}]} | /best
          {"effects": [["right", null, null], [null, null, null]], "cells": [{"row": 0, "column": 3, "quality": 5}]} | /cells/0
          {"effects": [["right", null, null], [null, null, null]], "cells": [{"row": 0, "column": 0, "quality": 5}, {"row": 0, "column": 0}]} | /cells/1
          {"effects": [["right", null, null], [null, null, null]], "cells": [null]} | /cells/0
          {"effects": [["right", null, null], [null, null, null]], "cells": [{"row": 0, "column": 0, "quality": 6}]} | /cells/0/quality
          {"effects": [["too-much", null, null], [null, null, null]], "cells": [{"row": 0, "column": 0, "quality": 3}]} | /cells/0/quality
          {"effects": [["right", null, null], [null, null, null]], "cells": [{"row": 0, "column": 0, "defects": ["halo", "sadness"]}]} | /cells/0/defects/1
          {"effects": [["right", null, null], [null, null, null]], "cells": [{"row": 1, "column": 1, "quality": 3}]} | /effects/1/1
          """)
  void badResultsAreToldAtTheirFieldAndNothingIsStored(String sent, String pointer) {
    ada.asks()
        .header("If-Match", "\"1\"")
        .body(sent)
        .put("/api/v1/grids/" + grid + "/results")
        .then()
        .statusCode(422)
        .body("errors.pointer", hasItem(pointer));
    ada.asks()
        .get("/api/v1/grids/" + grid + "/results")
        .then()
        .statusCode(200)
        .body("judged", equalTo(0))
        .body("version", equalTo(1))
        .body("$", not(hasKey("report")));
  }

  @Test
  void aWithdrawnGridTakesNoResults() {
    grids.withdraw(ada, grid);
    send(1, judged())
        .statusCode(422)
        .body("errors[0].detail", containsString("You have withdrawn this grid"));
    assertEquals(0, reports());
  }

  @Test
  void aReportThatWasTakenBackIsNotPostedAgain() {
    String report = send(1, judged()).extract().path("report");
    ada.asks().delete("/api/v1/reports/" + report).then().statusCode(204);
    send(2, judged())
        .statusCode(422)
        .body("errors[0].detail", containsString("withdrawn or removed"));
  }

  @Test
  void nobodyElseSeesResultsOrPhotoOfAGrid() {
    ada.asks()
        .contentType("image/png")
        .body(DrawnGrid.png(LYING))
        .put(photo())
        .then()
        .statusCode(200);
    Person other = People.join();
    other.asks().get("/api/v1/grids/" + grid + "/results").then().statusCode(404);
    other
        .asks()
        .header("If-Match", "\"1\"")
        .body(judged())
        .put("/api/v1/grids/" + grid + "/results")
        .then()
        .statusCode(404);
    other.asks().get(photo()).then().statusCode(404);
    other.asks().delete(photo()).then().statusCode(404);
    given().get(photo()).then().statusCode(401);
  }

  private String photo() {
    return "/api/v1/grids/" + grid + "/photo";
  }

  @Test
  void thePhotoGivesColoursAndDistancesAndCanBeShownWithTheReport() {
    ada.asks()
        .contentType("image/png")
        .body(DrawnGrid.png(LYING))
        .put(photo())
        .then()
        .statusCode(200)
        .body("width", equalTo(DrawnGrid.WIDTH))
        .body("corners", equalTo(null));
    ada.asks()
        .body(Map.of("corners", DrawnGrid.SLANTED.all()))
        .put(photo())
        .then()
        .statusCode(200)
        .body("corners", hasSize(4));
    // 8-bit JPEG of a drawn picture: two units of CIEDE2000 is more than enough
    double expected =
        Ciede2000.difference(Lab.ofRgb(DrawnGrid.BARE), Lab.ofRgb(DrawnGrid.colour(1, 2)));
    ada.asks()
        .get("/api/v1/grids/" + grid + "/results")
        .then()
        .body("bare.l", number(Lab.ofRgb(DrawnGrid.BARE).l()))
        .body("cells[5].distance", number(expected))
        .body("cells[5].colour.b", number(Lab.ofRgb(DrawnGrid.colour(1, 2)).b()));
    Map<String, Object> shown = judged();
    shown.put("showPhoto", true);
    String report = send(1, shown).statusCode(200).extract().path("report");
    send(2, shown).statusCode(200);
    report(report).body("photos", hasSize(1)).body("photos[0].width", equalTo(DrawnGrid.WIDTH));
    byte[] kept = ada.asks().get(photo()).then().statusCode(200).extract().asByteArray();
    assertTrue(kept.length > 1000);
    ada.asks().delete(photo()).then().statusCode(204);
    ada.asks().get(photo()).then().statusCode(404);
    ada.asks().get("/api/v1/grids/" + grid + "/results").then().body("$", not(hasKey("bare")));
    report(report).body("photos", hasSize(1));
  }

  private static Matcher<Float> number(double near) {
    return new TypeSafeMatcher<>() {
      @Override
      protected boolean matchesSafely(Float value) {
        return closeTo(near, 2).matches((double) value);
      }

      @Override
      public void describeTo(Description text) {
        text.appendText("about " + near);
      }
    };
  }

  @Test
  void picturesAndCornersThatCannotBeAreRefused() throws Exception {
    ada.asks().body(Map.of("corners", DrawnGrid.SLANTED.all())).put(photo()).then().statusCode(404);
    upload("<svg/>".getBytes(StandardCharsets.UTF_8)).statusCode(415);
    upload(Pictures.pngHeader(65_535, 65_535)).statusCode(422);
    upload(new byte[10 * 1024 * 1024 + 1]).statusCode(413);
    upload(DrawnGrid.png(LYING)).statusCode(200);
    corners("[]", "Mark all four corners");
    corners("[{\"x\":0.1,\"y\":0.1},{\"x\":0.9,\"y\":0.1},{\"x\":0.9,\"y\":0.9}]", "all four");
    corners(
        "[{\"x\":0.1,\"y\":0.1},{\"x\":0.9,\"y\":0.9},{\"x\":0.9,\"y\":0.1},{\"x\":0.1,\"y\":0.9}]",
        "cross");
    corners(
        "[{\"x\":0.1,\"y\":0.1},{\"x\":1.4,\"y\":0.1},{\"x\":0.9,\"y\":0.9},{\"x\":0.1,\"y\":0.9}]",
        "inside the photo");
  }

  private ValidatableResponse upload(byte[] picture) {
    return given()
        .header("Authorization", "Bearer " + ada.token())
        .contentType("application/octet-stream")
        .body(picture)
        .put(photo())
        .then();
  }

  private void corners(String corners, String said) {
    ada.asks()
        .body("{\"corners\":" + corners + "}")
        .put(photo())
        .then()
        .statusCode(422)
        .body("errors[0].pointer", equalTo("/corners"))
        .body("errors[0].detail", containsString(said));
  }

  /** Sixteen right cells of one member beside two members' single tests. */
  @Test
  void aGridFeedsTheRangeAsOneVoice() {
    grid = grids.plan(ada, 8);
    List<String> right = Collections.nCopies(8, "right");
    send(1, results(List.of(right, right))).statusCode(200);
    given()
        .get("/api/v1/consensus?material=slate&process=surface-engraving&member=" + ada.handle())
        .then()
        .statusCode(200)
        .body("groups[0].voices", equalTo(1))
        .body("groups[0].trials", equalTo(16))
        .body("groups[0].success.trials", equalTo(0));
  }
}
