package club.emberwell.api.machine;

import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@QuarkusTest
class MachineApiTest {
  private Person ada;

  @BeforeEach
  void join() {
    ada = People.join();
  }

  private static Map<String, Object> machine() {
    Map<String, Object> machine = new HashMap<>();
    machine.put("name", "Shed diode");
    machine.put("source", "diode");
    machine.put("wavelength", "445 nm");
    machine.put("ratedPower", "10 W");
    machine.put("motion", "gantry");
    machine.put("maxSpeed", "18000 mm/min");
    return machine;
  }

  private Response post(Object body) {
    return ada.asks()
        .header("Idempotency-Key", UUID.randomUUID().toString())
        .body(body)
        .post("/api/v1/machines");
  }

  @Test
  void aMachineIsAddedReadChangedAndTakenAway() {
    String location =
        post(machine())
            .then()
            .statusCode(201)
            .header("ETag", "\"1\"")
            .body("maxSpeed.value", equalTo(300))
            .body("maxSpeed.written", equalTo("18000 mm/min"))
            .body("regime", equalTo("cw"))
            .body("remarks.id", hasItem("regime-assumed"))
            .body("warnings", hasSize(0))
            .extract()
            .header("Location");
    String path = location.substring(location.indexOf("/api/"));
    ada.asks().get("/api/v1/machines").then().body("items.name", contains("Shed diode"));
    Map<String, Object> changed = machine();
    changed.put("lens", "50.8 mm");
    ada.asks().body(changed).put(path).then().statusCode(428);
    ada.asks()
        .header("If-Match", "\"1\"")
        .body(changed)
        .put(path)
        .then()
        .statusCode(200)
        .header("ETag", "\"2\"")
        .body("lens.value", equalTo(50.8f));
    ada.asks().header("If-Match", "\"1\"").body(changed).put(path).then().statusCode(412);
    ada.asks().delete(path).then().statusCode(204);
    ada.asks().get(path).then().statusCode(404);
    ada.asks().get("/api/v1/machines").then().body("items", hasSize(0));
  }

  @Test
  void nobodyElseKnowsOfIt() {
    String id = post(machine()).then().extract().path("id");
    Person other = People.join();
    other.asks().get("/api/v1/machines/" + id).then().statusCode(404);
    other.asks().delete("/api/v1/machines/" + id).then().statusCode(404);
    other
        .asks()
        .header("If-Match", "\"1\"")
        .body(machine())
        .put("/api/v1/machines/" + id)
        .then()
        .statusCode(404);
  }

  @Test
  void aWavelengthUnlikeItsSourceIsWarnedOf() {
    Map<String, Object> odd = machine();
    odd.put("wavelength", "10.6 um");
    post(odd).then().statusCode(201).body("warnings.pointer", hasItem("/wavelength"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "name|''",
        "source|steam",
        "wavelength|blue",
        "wavelength|5 W",
        "ratedPower|-10 W",
        "ratedPower|10",
        "motion|sideways",
        "regime|often",
        "lens|5 W",
        "beamDiameter|-1 um",
        "maxSpeed|600 mm/m",
        "pulseControl|maybe",
        "divergence|2",
        "divergence|2 mm",
        "divergence|-1 mrad",
        "divergence|4 rad"
      })
  void aFieldAtFaultIsNamed(String field, String value) {
    Map<String, Object> bad = machine();
    bad.put(field, value);
    post(bad).then().statusCode(422).body("errors.pointer", contains("/" + field));
    ada.asks().get("/api/v1/machines").then().body("items", hasSize(0));
  }

  @Test
  void aFieldThatMustNotBeSetIsRefused() {
    for (String field : new String[] {"version", "memberId", "number", "createdAt"}) {
      Map<String, Object> bad = machine();
      bad.put(field, 1);
      post(bad).then().statusCode(400).body("errors.pointer", contains("/" + field));
    }
  }
}
