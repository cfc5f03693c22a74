package club.emberwell.recipe;

import static org.junit.jupiter.api.Assertions.assertEquals;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.entry.Revision;
import club.emberwell.member.Actor;
import club.emberwell.member.Members;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** All that a member keeps, at once. */
@QuarkusTest
class RevisionsTest {
  @Inject Revisions revisions;
  @Inject Members members;

  @Test
  void everyRecipeThatStandsIsThereWithEveryRevision() {
    Person ada = People.join();
    Actor actor = members.byId(UUID.fromString(ada.id())).orElseThrow().actor();
    assertEquals(List.of(), revisions.everything(actor));
    String machine =
        ada.makes(
            "machines",
            Map.of(
                "name", "Tube",
                "source", "co2",
                "wavelength", "10.6 um",
                "ratedPower", "40 W",
                "motion", "gantry"));
    Map<String, Object> recipe = new HashMap<>();
    recipe.put("machine", machine);
    recipe.put("material", "maple");
    recipe.put("process", "cut");
    recipe.put("settings", Map.of("power", "60 %", "speed", "5 mm/s"));
    String first = ada.makes("recipes", recipe);
    ada.makes("recipes", recipe);
    String gone = ada.makes("recipes", recipe);
    ada.asks().delete("/api/v1/recipes/" + gone).then().statusCode(204);
    recipe.put("settings", Map.of("power", "80 %", "speed", "5 mm/s"));
    recipe.put("reason", "Thicker sheets.");
    ada.asks()
        .header("If-Match", "\"1\"")
        .body(recipe)
        .put("/api/v1/recipes/" + first)
        .then()
        .statusCode(200);
    List<Revisions.Kept> all = revisions.everything(actor);
    assertEquals(List.of(2, 1), all.stream().map(kept -> kept.revisions().size()).toList());
    assertEquals(first, all.get(0).recipe().id().toString());
    Revision<WrittenRecipe> newest = all.get(0).revisions().get(0);
    assertEquals("Thicker sheets.", newest.reason());
    assertEquals(all.get(0).recipe().written(), newest.written());
  }
}
