package club.emberwell.card;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** A member with a laser, glasses, a room, a fixture and a recipe that names them. */
public record Shop(Person owner, String machine, String room, String fixture, String recipe) {
  public static final List<String> STEPS =
      List.of("Lay the jig against the stop.", "Put the pieces in, good side up.");
  public static final List<String> OWN_LINES =
      List.of("The dog is outside.", "The door to the house is shut.");

  /**
   * @param housing of its laser of 40 W
   */
  public static Shop open(String housing) {
    return open(housing, Map.of());
  }

  /**
   * @param other what the recipe says instead
   */
  public static Shop open(String housing, Map<String, Object> other) {
    Person owner = People.join();
    String machine =
        owner.makes(
            "machines",
            Map.of(
                "name",
                "Long tube",
                "source",
                "co2",
                "wavelength",
                "10.6 um",
                "ratedPower",
                "40 W",
                "motion",
                "gantry",
                "housing",
                housing));
    owner.makes("eyewear", Map.of("name", "Green pair", "marking", "OD 7+ @ 9000-11000 nm"));
    owner.makes("eyewear", Map.of("name", "Old pair", "marking", "OD 7+ @ 900-1100 nm"));
    String room = owner.makes("rooms", Map.of("name", "North shed", "lines", OWN_LINES));
    String fixture =
        owner.makes(
            "fixtures",
            Map.of(
                "name",
                "Coaster jig",
                "place",
                "Shelf two",
                "rows",
                2,
                "columns",
                3,
                "pitchX",
                "110 mm",
                "pitchY",
                "100 mm",
                "offsetX",
                "55 mm",
                "offsetY",
                "50 mm"));
    Map<String, Object> recipe = recipe(machine);
    recipe.putAll(Map.of("room", room, "fixture", fixture, "position", 5, "steps", STEPS));
    recipe.putAll(other);
    return new Shop(owner, machine, room, fixture, owner.makes("recipes", recipe));
  }

  /** A recipe for a machine, without a word of how it is done. */
  public static Map<String, Object> recipe(String machine) {
    Map<String, Object> recipe = new HashMap<>();
    recipe.put("name", "Coasters for the fair");
    recipe.put("folder", "Nobody else’s folder");
    recipe.put("machine", machine);
    recipe.put("material", "birch plywood");
    recipe.put("thickness", "3 mm");
    recipe.put("supplier", "Dell Timber");
    recipe.put("lot", "B-17");
    recipe.put("process", "cut");
    recipe.put("settings", Map.of("power", "60 %", "speed", "20 mm/s", "focusOffset", "-1 mm"));
    recipe.put("notes", "Sort out pieces with knots.");
    return recipe;
  }

  /** Changes its speed: another revision. */
  public void faster(String speed) {
    Map<String, Object> recipe = recipe(machine);
    recipe.putAll(Map.of("room", room, "fixture", fixture, "position", 5, "steps", STEPS));
    recipe.put("settings", Map.of("power", "60 %", "speed", speed, "focusOffset", "-1 mm"));
    recipe.put("reason", "It was slow.");
    int version = owner.asks().get("/api/v1/recipes/" + this.recipe).path("version");
    owner
        .asks()
        .header("If-Match", "\"" + version + "\"")
        .body(recipe)
        .put("/api/v1/recipes/" + this.recipe)
        .then()
        .statusCode(200);
  }

  /** The secret of a new link to its card. */
  public String link() {
    String url =
        owner
            .asks()
            .post("/api/v1/recipes/" + recipe + "/links")
            .then()
            .statusCode(201)
            .extract()
            .path("url");
    return url.replaceFirst(".*/", "");
  }
}
