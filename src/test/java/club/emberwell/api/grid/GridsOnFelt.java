package club.emberwell.api.grid;

import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.hasItem;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import io.restassured.response.ValidatableResponse;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.TestInstance;

/**
 * Nine members with a 10 W diode on felt: 0.5 J/mm² too little, 1 to 2 right, 4 too much, all at 50
 * % and 0.1 mm.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
abstract class GridsOnFelt {
  static final String MATERIAL = "felt";

  private static boolean posted;

  Person ada;

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
      post(person, 50 / (0.5 * off), "too-little");
      post(person, 50 / (1.1 * off), "right");
      post(person, 50 / (1.8 * off), "right");
      post(person, 50 / (4 * off), "too-much");
    }
  }

  static Map<String, Object> laser() {
    return Map.of(
        "source", "diode",
        "wavelength", "455 nm",
        "ratedPower", "10 W",
        "motion", "gantry",
        "beamDiameter", "80 um");
  }

  static void post(Person person, double speed, String effect) {
    Map<String, Object> report = new HashMap<>();
    report.put("laser", laser());
    report.put("material", MATERIAL);
    report.put("process", "surface-engraving");
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

  static ValidatableResponse keyed(Person person, Map<String, Object> report) {
    return person
        .asks()
        .header("Idempotency-Key", "\"" + UUID.randomUUID() + "\"")
        .body(report)
        .post("/api/v1/reports")
        .then();
  }

  static Map<String, Object> asked() {
    Map<String, Object> grid = new HashMap<>();
    grid.put("laser", laser());
    grid.put("material", MATERIAL);
    grid.put("process", "surface-engraving");
    return grid;
  }

  static Map<String, Object> byHand(Object powers, Object speeds) {
    Map<String, Object> grid = asked();
    grid.put("settings", Map.of("lineSpacing", "0.1 mm"));
    grid.put(
        "axes",
        Map.of(
            "across", Map.of("setting", "power", "values", powers),
            "down", Map.of("setting", "speed", "values", speeds)));
    return grid;
  }

  static List<String> speeds(int count) {
    return IntStream.rangeClosed(1, count).mapToObj(i -> i * 10 + " mm/s").toList();
  }

  ValidatableResponse plan(Map<String, Object> grid) {
    return ada.asks().body(grid).post("/api/v1/grids/plan").then();
  }

  ValidatableResponse keep(Map<String, Object> grid) {
    return ada.asks()
        .header("Idempotency-Key", UUID.randomUUID().toString())
        .body(grid)
        .post("/api/v1/grids")
        .then();
  }

  static double number(ValidatableResponse answer, String path) {
    return ((Number) answer.extract().path(path)).doubleValue();
  }

  static Map<String, Object> axis(String setting, String... values) {
    return Map.of("setting", setting, "values", List.of(values));
  }

  static void refused(ValidatableResponse answer, String pointer, String words) {
    answer
        .statusCode(422)
        .contentType("application/problem+json")
        .body("errors.pointer", hasItem(pointer))
        .body("errors.find { it.pointer == '" + pointer + "' }.detail", containsString(words));
  }

  static Object path(Object from, String... names) {
    Object at = from;
    for (String name : names) {
      at = ((Map<?, ?>) at).get(name);
    }
    return at;
  }
}
