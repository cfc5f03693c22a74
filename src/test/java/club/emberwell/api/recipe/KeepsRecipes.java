package club.emberwell.api.recipe;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import io.restassured.response.Response;
import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;

/** A member with a machine who keeps recipes. */
abstract class KeepsRecipes {
  static final String RECIPES = "/api/v1/recipes";

  Person ada;
  Person eve;
  String machine;

  @BeforeEach
  void join() {
    ada = People.join();
    eve = People.join();
    machine = tube(ada);
  }

  static String tube(Person owner) {
    return owner.makes(
        "machines",
        Map.of(
            "name", "Long tube",
            "source", "co2",
            "wavelength", "10.6 um",
            "ratedPower", "40 W",
            "motion", "gantry"));
  }

  Map<String, Object> recipe() {
    Map<String, Object> recipe = new HashMap<>();
    recipe.put("name", "Coasters for the fair");
    recipe.put("folder", "Fair");
    recipe.put("machine", machine);
    recipe.put("material", "maple");
    recipe.put("process", "surface-engraving");
    recipe.put("settings", settings("60 %"));
    recipe.put("notes", "Mask it first.");
    return recipe;
  }

  static Map<String, Object> settings(String power) {
    return Map.of("power", power, "speed", "24000 mm/min", "lineSpacing", "254 dpi");
  }

  static Response post(Person by, String path, Object body) {
    return by.asks()
        .header("Idempotency-Key", UUID.randomUUID().toString())
        .body(body)
        .post(RECIPES + path);
  }

  Response put(String id, int version, Object body) {
    return ada.asks().header("If-Match", "\"" + version + "\"").body(body).put(RECIPES + "/" + id);
  }

  String kept() {
    return post(ada, "", recipe()).then().statusCode(201).extract().path("id");
  }

  Map<String, Object> changed(String power, String reason) {
    Map<String, Object> recipe = recipe();
    recipe.put("settings", settings(power));
    recipe.put("reason", reason);
    return recipe;
  }
}
