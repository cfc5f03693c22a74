package club.emberwell.api.recipe;

import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Recipes out of a table of one's own. */
@QuarkusTest
class RecipeTableApiTest extends KeepsRecipes {
  @Test
  void aTableIsReadInRowByRow() {
    String table =
        """
        Name,Material,Speed,Power,Machine,Passes
        Coasters,maple,24,60 %,long TUBE,2
        ,oak,30,60 %,,two
        Signs,PVC,30,60 %,,1
        Small,maple,20,60 %,Elsewhere,1
        """;
    Map<String, Object> sent = new HashMap<>();
    sent.put("id", UUID.randomUUID());
    sent.put("table", table);
    sent.put("machine", machine);
    sent.put("process", "surface-engraving");
    sent.put("folder", "Old sheet");
    sent.put(
        "columns",
        List.of(
            Map.of("column", 0, "field", "name"),
            Map.of("column", 1, "field", "material"),
            Map.of("column", 2, "field", "settings.speed", "unit", "m/min"),
            Map.of("column", 3, "field", "settings.power"),
            Map.of("column", 4, "field", "machine"),
            Map.of("column", 5, "field", "settings.passes")));
    sent.put("preview", true);
    read(sent)
        .body("recipes.title", contains("Coasters"))
        .body("recipes.recipe", contains((Object) null));
    ada.asks().get(RECIPES).then().body("items", empty());
    sent.put("preview", false);
    read(sent)
        .body("recipes.row", contains(1))
        .body("refused.row", contains(2, 3, 4))
        .body("refused[0].errors.pointer", contains("/settings/passes"))
        .body("refused[1].errors.id", contains("prohibited"))
        .body("refused[2].errors.pointer", contains("/machine"))
        .body("toMend", containsString("Signs,PVC,30,60 %,,1,"));
    read(sent);
    ada.asks()
        .get(RECIPES)
        .then()
        .body("items.title", contains("Coasters"))
        .body("items.folder", contains("Old sheet"))
        .body("items[0].settings.passes", equalTo(2))
        .body("items[0].settings.speed.value", equalTo(400));
  }

  private ValidatableResponse read(Map<String, Object> sent) {
    return post(ada, "/imports", sent).then().statusCode(200);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "{'table': ''} | /table",
        "{'table': 'a,b'} | /table",
        "{'table': 'a,b\\n1,\"2'} | /table",
        "{'table': 'a\\n1'} | /columns",
        "{'table': 'a\\n1', 'columns': [{'column': 1, 'field': 'name'}]} | /columns/0/column",
        "{'table': 'a\\n1', 'columns': [{'column': 0, 'field': 'luck'}]} | /columns/0/field",
        "{'table': 'a\\n1', 'columns': [{'column': 0}]} | /columns/0/field"
      })
  void aTableAtFaultIsRefusedWhole(String sent, String pointer) {
    post(ada, "/imports", sent.replace("\"", "\\\"").replace('\'', '"'))
        .then()
        .statusCode(422)
        .body("errors.pointer", contains(pointer));
  }

  @Test
  void aTableThatIsTooLargeIsRefused() {
    for (String table : List.of("a\n" + "1\n".repeat(501), "a," + "b,".repeat(60) + "\n1")) {
      post(ada, "/imports", Map.of("table", table))
          .then()
          .statusCode(422)
          .body("errors.pointer", contains("/table"));
    }
  }
}
