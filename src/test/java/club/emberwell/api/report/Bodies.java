package club.emberwell.api.report;

import club.emberwell.access.People.Person;
import io.restassured.specification.RequestSpecification;
import java.util.HashMap;
import java.util.Map;
import java.util.UUID;

/** JSON bodies for tests, changed field by field. */
public final class Bodies {
  private Bodies() {}

  static Map<String, Object> laser() {
    Map<String, Object> laser = new HashMap<>();
    laser.put("source", "co2");
    laser.put("wavelength", "10.6 um");
    laser.put("ratedPower", "40 W");
    laser.put("motion", "gantry");
    laser.put("regime", "cw");
    laser.put("beamDiameter", "150 um");
    return laser;
  }

  /** 40 W, 400 mm/s, 0.1 mm: 1.0 J/mm2. */
  static Map<String, Object> settings() {
    Map<String, Object> settings = new HashMap<>();
    settings.put("power", "100 %");
    settings.put("speed", "400 mm/s");
    settings.put("lineSpacing", "0.1 mm");
    return settings;
  }

  public static Map<String, Object> report() {
    Map<String, Object> report = new HashMap<>();
    report.put("laser", laser());
    report.put("material", "birch plywood");
    report.put("process", "surface-engraving");
    report.put("settings", settings());
    report.put("effect", "right");
    return report;
  }

  static Map<String, Object> machine() {
    Map<String, Object> machine = new HashMap<>(laser());
    machine.remove("beamDiameter");
    machine.put("name", "Shed tube");
    return machine;
  }

  public static String key() {
    return UUID.randomUUID().toString();
  }

  /** A keyed request of that person. */
  static RequestSpecification keyed(Person person, Object body) {
    return person.asks().header("Idempotency-Key", key()).body(body);
  }

  /** Posts the report; answers its id. */
  public static String post(Person person, Map<String, Object> report) {
    return keyed(person, report)
        .post("/api/v1/reports")
        .then()
        .statusCode(201)
        .extract()
        .path("id");
  }
}
