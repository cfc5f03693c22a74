package club.emberwell.api.recipe;

import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import io.restassured.response.ValidatableResponse;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Recipes over JSON: kept, changed with a reason, looked back at, published. */
@QuarkusTest
class RecipeApiTest extends KeepsRecipes {
  @Test
  void aRecipeIsKeptAsWrittenAndAsReadAndSeenByItsOwnerAlone() {
    Response made = post(ada, "", recipe());
    made.then()
        .statusCode(201)
        .header("ETag", "\"1\"")
        .header("Location", containsString(RECIPES + "/" + made.path("id")))
        .body("title", equalTo("Coasters for the fair"))
        .body("folder", equalTo("Fair"))
        .body("settings.speed.value", equalTo(400))
        .body("settings.speed.unit", equalTo("mm/s"))
        .body("settings.speed.written", equalTo("24000 mm/min"))
        .body("settings.lineSpacing.value", equalTo(0.1f))
        .body("written.settings.lineSpacing", equalTo("254 dpi"))
        .body("written.cameFrom.way", equalTo("hand"))
        .body("material.value", equalTo("maple"))
        .body("derived.averagePower.value", equalTo(24))
        .body("notes", equalTo("Mask it first."))
        .body("usedAt", nullValue())
        .body("cautions.id", not(empty()));
    String path = RECIPES + "/" + made.path("id");
    eve.asks().get(path).then().statusCode(404);
    eve.asks().get(path + "/revisions").then().statusCode(404);
    eve.asks().get(RECIPES).then().body("items", empty());
    ada.asks().get(RECIPES).then().body("items.title", contains("Coasters for the fair"));
    ada.asks().delete(path).then().statusCode(204);
    ada.asks().get(path).then().statusCode(404);
    ada.asks().get(RECIPES).then().body("items", empty());
  }

  @Test
  void withoutANameItIsCalledByItsWork() {
    Map<String, Object> recipe = recipe();
    recipe.remove("name");
    post(ada, "", recipe).then().statusCode(201).body("title", equalTo("maple"));
  }

  @Test
  void theSameIdWithTheSameWordsIsOneRecipe() {
    Map<String, Object> recipe = recipe();
    recipe.put("id", UUID.randomUUID());
    post(ada, "", recipe).then().statusCode(201);
    post(ada, "", recipe).then().statusCode(201);
    ada.asks().get(RECIPES).then().body("items", hasSize(1));
    recipe.put("notes", "Other words.");
    post(ada, "", recipe).then().statusCode(422).body("errors.pointer", contains("/id"));
  }

  @Test
  void everyChangeIsARevisionWithItsReasonAndAnyComesBackAsAnother() {
    String id = kept();
    String path = RECIPES + "/" + id;
    put(id, 1, changed("70 %", " "))
        .then()
        .statusCode(422)
        .body("errors.pointer", contains("/reason"));
    put(id, 1, changed("70 %", "Too pale."))
        .then()
        .statusCode(200)
        .header("ETag", "\"2\"")
        .body("settings.powerPercent.value", equalTo(70));
    put(id, 1, changed("75 %", "Late.")).then().statusCode(412);
    put(id, 2, changed("80 %", "Still pale.")).then().statusCode(200);
    post(ada, "/" + id + "/restorations", Map.of("revision", 1, "reason", "x"))
        .then()
        .statusCode(428);
    restore(id, 3, Map.of("revision", 9, "reason", "x"))
        .then()
        .statusCode(422)
        .body("errors.pointer", contains("/revision"));
    restore(id, 3, Map.of("revision", 2, "reason", "Charred."))
        .then()
        .statusCode(200)
        .header("ETag", "\"4\"")
        .body("settings.powerPercent.value", equalTo(70));
    ada.asks()
        .get(path + "/revisions")
        .then()
        .body("items.version", contains(4, 3, 2, 1))
        .body("items.action", contains("restored", "edited", "edited", "posted"))
        .body("items.reason", contains("Charred.", "Still pale.", "Too pale.", null))
        .body("items.written.settings.power", contains("70 %", "80 %", "70 %", "60 %"))
        .body("items[2].changes.pointer", contains("/settings/power"))
        .body("items[2].changes[0].before", equalTo("60 %"))
        .body("items[2].changes[0].after", equalTo("70 %"));
  }

  private Response restore(String id, int version, Object body) {
    return ada.asks()
        .header("If-Match", "\"" + version + "\"")
        .header("Idempotency-Key", UUID.randomUUID().toString())
        .body(body)
        .post(RECIPES + "/" + id + "/restorations");
  }

  @Test
  void aRevisionForAMachineThatWasRemovedComesBackAndANewRecipeForItDoesNot() {
    String id = kept();
    String old = machine;
    machine = tube(ada);
    put(id, 1, changed("60 %", "On the new one.")).then().statusCode(200);
    ada.asks().delete("/api/v1/machines/" + old).then().statusCode(204);
    restore(id, 2, Map.of("revision", 1, "reason", "To see it."))
        .then()
        .statusCode(200)
        .body("written.machine", equalTo(old));
    machine = old;
    post(ada, "", recipe()).then().statusCode(422).body("errors.pointer", contains("/machine"));
  }

  @Test
  void aUseIsShownAndSortedByAndIsNoRevision() {
    String first = kept();
    Map<String, Object> other = recipe();
    other.put("name", "Anchors");
    String second = post(ada, "", other).path("id");
    ada.asks().get(RECIPES).then().body("items.id", contains(second, first));
    post(ada, "/" + first + "/uses", Map.of())
        .then()
        .statusCode(200)
        .header("ETag", "\"1\"")
        .body("usedAt", notNullValue());
    ada.asks().get(RECIPES).then().body("items.id", contains(first, second));
    sorted("newest").body("items.id", contains(second, first));
    sorted("name").body("items.id", contains(second, first));
    ada.asks().get(RECIPES + "/" + first + "/revisions").then().body("items", hasSize(1));
    ada.asks()
        .queryParam("sort", "best")
        .get(RECIPES)
        .then()
        .statusCode(422)
        .body("errors.pointer", contains("/sort"));
    for (String sort : List.of("used", "newest", "name")) {
      String next =
          ada.asks().queryParam("sort", sort).queryParam("size", 1).get(RECIPES).path("next");
      ada.asks()
          .queryParam("sort", sort)
          .queryParam("cursor", next)
          .get(RECIPES)
          .then()
          .statusCode(200)
          .body("items", hasSize(1))
          .body("items.id", contains(sort.equals("used") ? second : first));
    }
  }

  private ValidatableResponse sorted(String sort) {
    return ada.asks().queryParam("sort", sort).get(RECIPES).then().statusCode(200);
  }

  @Test
  void wordsAndFoldersFindRecipes() {
    String id = kept();
    for (String words : List.of("coasters", "FAIR maple", "mask", "surface engr", "long tube")) {
      ada.asks().queryParam("q", words).get(RECIPES).then().body("items.id", contains(id));
    }
    for (String words : List.of("oak", "maple oak", "%", "_")) {
      ada.asks().queryParam("q", words).get(RECIPES).then().body("items", empty());
    }
    ada.asks().queryParam("folder", "Fair").get(RECIPES).then().body("items.id", contains(id));
    ada.asks().queryParam("folder", "Shop").get(RECIPES).then().body("items", empty());
    ada.asks()
        .queryParam("q", "x".repeat(201))
        .get(RECIPES)
        .then()
        .statusCode(422)
        .body("errors.pointer", contains("/q"));
  }

  @Test
  void aFolderIsRenamedAndEachRecipeInItSaysSo() {
    String id = kept();
    ada.asks()
        .get(RECIPES + "/folders")
        .then()
        .body("items.name", contains("Fair"))
        .body("items.recipes", contains(1));
    post(ada, "/folders/renamings", Map.of("from", "Shop", "to", "x"))
        .then()
        .statusCode(422)
        .body("errors.pointer", contains("/from"));
    post(ada, "/folders/renamings", Map.of("from", "Fair"))
        .then()
        .statusCode(422)
        .body("errors.pointer", contains("/to"));
    post(eve, "/folders/renamings", Map.of("from", "Fair", "to", "Mine")).then().statusCode(422);
    post(ada, "/folders/renamings", Map.of("from", "Fair", "to", "Markets"))
        .then()
        .statusCode(200)
        .body("name", equalTo("Markets"))
        .body("recipes", equalTo(1));
    ada.asks()
        .get(RECIPES + "/" + id + "/revisions")
        .then()
        .body("items[0].reason", equalTo("The folder “Fair” is now called “Markets”."))
        .body("items[0].changes.pointer", contains("/folder"));
    restore(id, 2, Map.of("revision", 1, "reason", "As it was."))
        .then()
        .body("folder", equalTo("Markets"));
  }

  @Test
  void aRecipeBecomesAReportThatLeadsBackAndItsNotesStayPrivate() {
    String id = kept();
    post(ada, "/" + id + "/reports", Map.of("quality", 4))
        .then()
        .statusCode(422)
        .body("errors.pointer", hasItem("/effect"));
    String report =
        post(ada, "/" + id + "/reports", Map.of("effect", "right", "quality", 4))
            .then()
            .statusCode(201)
            .body("material.value", equalTo("maple"))
            .body("machine.id", equalTo(machine))
            .body("settings.powerPercent.value", equalTo(60))
            .body("effect", equalTo("right"))
            .body("quality", equalTo(4))
            .body("notes", nullValue())
            .extract()
            .path("id");
    ada.asks()
        .get(RECIPES + "/" + id + "/reports")
        .then()
        .body("items.report", contains(report))
        .body("items.version", contains(1));
    eve.asks().get("/api/v1/reports/" + report).then().statusCode(200);
    eve.asks().get(RECIPES + "/" + id + "/reports").then().statusCode(404);
    post(eve, "/" + id + "/reports", Map.of("effect", "right")).then().statusCode(404);
    ada.asks().delete("/api/v1/reports/" + report).then().statusCode(204);
    ada.asks().get(RECIPES + "/" + id + "/reports").then().body("items", empty());
  }

  @Test
  void whereItsSettingsCameFromIsCheckedAndStays() {
    String report = post(ada, "/" + kept() + "/reports", Map.of("effect", "right")).path("id");
    Map<String, Object> recipe = recipe();
    recipe.put("cameFrom", Map.of("report", report));
    String id =
        post(ada, "", recipe)
            .then()
            .statusCode(201)
            .body("written.cameFrom.way", equalTo("report"))
            .body("written.cameFrom.report", equalTo(report))
            .extract()
            .path("id");
    Map<String, Object> changed = changed("50 %", "Less.");
    changed.put("cameFrom", Map.of("way", "answer"));
    put(id, 1, changed).then().body("written.cameFrom.report", equalTo(report));
    recipe.put("cameFrom", Map.of("recipe", id));
    post(ada, "", recipe).then().statusCode(201).body("written.cameFrom.version", equalTo(2));
    for (var wrong :
        Map.of(
                "/cameFrom/report", Map.of("report", UUID.randomUUID()),
                "/cameFrom/trial", Map.of("report", report, "trial", 3),
                "/cameFrom/grid", Map.of("way", "grid", "grid", UUID.randomUUID()),
                "/cameFrom/recipe", Map.of("recipe", UUID.randomUUID()),
                "/cameFrom/version", Map.of("recipe", id, "version", 7),
                "/cameFrom/way", Map.of("way", "luck"))
            .entrySet()) {
      recipe.put("cameFrom", wrong.getValue());
      post(ada, "", recipe).then().statusCode(422).body("errors.pointer", contains(wrong.getKey()));
    }
  }

  @ParameterizedTest
  @CsvSource({
    "machine,, /machine",
    "material,, /material",
    "process,, /process",
    "process, melting, /process",
    "settings,, /settings",
    "name, 81, /name",
    "folder, 61, /folder",
    "notes, 4001, /notes"
  })
  void aFieldAtFaultIsNamed(String field, String value, String pointer) {
    Map<String, Object> bad = recipe();
    boolean tooLong = value != null && value.matches("\\d+");
    bad.put(field, tooLong ? "x".repeat(Integer.parseInt(value)) : value);
    post(ada, "", bad).then().statusCode(422).body("errors.pointer", contains(pointer));
    ada.asks().get(RECIPES).then().body("items", empty());
  }

  @Test
  void settingsAreReadAsThoseOfReports() {
    Map<String, Object> recipe = recipe();
    recipe.put("settings", Map.of("power", "60 furlongs", "speed", "fast"));
    post(ada, "", recipe)
        .then()
        .statusCode(422)
        .body("errors.pointer", hasItem("/settings/power"))
        .body("errors.pointer", hasItem("/settings/speed"));
    recipe.put("settings", settings("45 W"));
    String warned =
        post(ada, "", recipe).then().statusCode(201).extract().path("warnings[0].pointer");
    assertEquals("/settings/power", warned);
  }

  @Test
  void aProhibitedMaterialTakesNoRecipe() {
    Map<String, Object> recipe = recipe();
    recipe.put("material", "PVC");
    post(ada, "", recipe)
        .then()
        .statusCode(422)
        .body("type", containsString("prohibited-work"))
        .body("prohibited.agent", notNullValue());
    recipe.put("material", "maple");
    String id = post(ada, "", recipe).path("id");
    Map<String, Object> changed = changed("60 %", "Plastic now.");
    changed.put("material", "PVC");
    put(id, 1, changed).then().statusCode(422).body("type", containsString("prohibited-work"));
  }
}
