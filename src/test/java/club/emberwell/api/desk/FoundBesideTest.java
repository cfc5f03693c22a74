package club.emberwell.api.desk;

import static io.restassured.RestAssured.given;
import static org.awaitility.Awaitility.await;
import static org.junit.jupiter.api.Assertions.assertEquals;

import club.emberwell.report.photo.Pictures;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import java.time.Duration;
import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** A report is found by what lies beside it, as it stands now: its pictures and its machine. */
@QuarkusTest
class FoundBesideTest extends DeskCalls {
  private ValidatableResponse send(String path, Object body) {
    return author
        .asks()
        .header("Idempotency-Key", UUID.randomUUID().toString())
        .body(body)
        .post("/api/v1/" + path)
        .then();
  }

  private static Map<String, Object> machine(String model) {
    Map<String, Object> machine = new HashMap<>();
    machine.put("name", "Marking fibre");
    machine.put("model", model);
    machine.put("source", "fibre");
    machine.put("wavelength", "1064 nm");
    machine.put("ratedPower", "20 W");
    machine.put("motion", "galvo");
    return machine;
  }

  private String report(String machine) {
    Map<String, Object> report = new HashMap<>();
    report.put("machine", machine);
    report.put("material", "slate");
    report.put("process", "surface-engraving");
    report.put("settings", Map.of("power", "50 %", "speed", "400 mm/s", "lineSpacing", "0.1 mm"));
    report.put("effect", "right");
    return send("reports", report).statusCode(201).extract().path("id");
  }

  private int found(String parameter) {
    String mine = "/api/v1/reports?member=" + author.handle() + "&" + parameter;
    return given().get(mine).then().statusCode(200).extract().path("total");
  }

  private void becomes(int total, String parameter) {
    await()
        .atMost(Duration.ofSeconds(20))
        .untilAsserted(() -> assertEquals(total, found(parameter), parameter));
  }

  @Test
  void aHiddenPictureIsNoPicture() throws Exception {
    String machine = send("machines", machine(null)).statusCode(201).extract().path("id");
    String id = report(machine);
    assertEquals(1, found("photo=without"));
    String photo =
        given()
            .header("Authorization", "Bearer " + author.token())
            .header("Idempotency-Key", UUID.randomUUID().toString())
            .contentType("application/octet-stream")
            .body(Pictures.of(30, 30, "png"))
            .post("/api/v1/reports/" + id + "/photos")
            .then()
            .statusCode(201)
            .extract()
            .path("id");
    becomes(1, "photo=with");
    String decisions = "desk/items/photo/" + photo + "/decisions";
    post(moderator, decisions, body("action", "remove", "reason", "Not theirs.")).statusCode(200);
    becomes(0, "photo=with");
  }

  @Test
  void aMachineIsFoundByWhatItIsCalledNow() {
    String machine = send("machines", machine("Sprig 20")).statusCode(201).extract().path("id");
    report(machine);
    assertEquals(1, found("machineModel=Sprig 20"));
    assertEquals(1, found("machineName=Marking fibre"));
    assertEquals(0, found("machineName=Other"));
    assertEquals(1, found("q=sprig"));
    author
        .asks()
        .header("If-Match", "\"1\"")
        .body(machine("Sprig 21 quokkabeam"))
        .put("/api/v1/machines/" + machine)
        .then()
        .statusCode(200);
    becomes(1, "q=quokkabeam");
    assertEquals(0, found("machineModel=Sprig 20"));
  }
}
