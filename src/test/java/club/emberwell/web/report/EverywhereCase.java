package club.emberwell.web.report;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.hasItem;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import io.restassured.path.json.JsonPath;
import io.restassured.specification.RequestSpecification;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.junit.jupiter.api.BeforeEach;

/** What the walks over the catalogues share: a member with a machine who posts and reads again. */
abstract class EverywhereCase {
  static final String REPORTS = "/api/v1/reports";
  static final String FORM = "form.post-form";

  Person ada;
  private String machine;

  @BeforeEach
  void join() {
    ada = People.join();
    machine = machine(ada);
  }

  static String machine(Person person) {
    return keyed(
            person,
            Map.of(
                "name", "Marking fibre",
                "source", "fibre",
                "wavelength", "1064 nm",
                "ratedPower", "20 W",
                "motion", "galvo"))
        .post("/api/v1/machines")
        .then()
        .statusCode(201)
        .extract()
        .path("id");
  }

  static RequestSpecification keyed(Person who, Object body) {
    return who.asks().header("Idempotency-Key", UUID.randomUUID().toString()).body(body);
  }

  /** A report with the least that is needed beside its settings; its fields may be changed. */
  Map<String, Object> report(Map<String, Object> settings) {
    Map<String, Object> report = new HashMap<>();
    report.put("machine", machine);
    report.put("material", "birch plywood");
    report.put("process", "surface-engraving");
    report.put("settings", settings);
    report.put("effect", "right");
    return report;
  }

  String post(Map<String, Object> report) {
    return keyed(ada, report).post(REPORTS).then().statusCode(201).extract().path("id");
  }

  /** Changes what a form has changed once before, and finds the field among the differences. */
  void changes(String id, Map<String, Object> report, String field) {
    ada.asks()
        .header("If-Match", "\"2\"")
        .body(report)
        .put(REPORTS + "/" + id)
        .then()
        .statusCode(200);
    given()
        .get(REPORTS + "/" + id + "/history")
        .then()
        .statusCode(200)
        .body("items[0].changes.pointer", hasItem(field));
  }

  static JsonPath read(String id) {
    return given().get(REPORTS + "/" + id).then().statusCode(200).extract().jsonPath();
  }

  /** What a member is handed out of theirs, from one of its files. */
  JsonPath downloaded(String file) throws IOException {
    byte[] zip = ada.asks().get("/api/v1/me/data").then().statusCode(200).extract().asByteArray();
    try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(zip))) {
      for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
        if (entry.getName().equals(file)) {
          return JsonPath.from(new String(in.readAllBytes(), StandardCharsets.UTF_8));
        }
      }
    }
    throw new AssertionError("no " + file + " in the download");
  }
}
