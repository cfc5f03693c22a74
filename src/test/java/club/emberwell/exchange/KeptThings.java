package club.emberwell.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.Map;

/** What only its owner ever saw, in the owner's download. */
final class KeptThings {
  private static final ObjectMapper JSON = new ObjectMapper();

  private KeptThings() {}

  /**
   * @param report that the sample shows
   */
  static void areIn(Map<String, byte[]> files, String report) throws IOException {
    JsonNode grids = JSON.readTree(files.get("grids.json"));
    assertEquals(2, grids.size());
    assertTrue(grids.get(0).at("/written/notes").asText().contains("behind the mill"));
    assertEquals(1, grids.get(0).get("revisions").size());
    assertEquals(200, JSON.readTree(files.get("grid-photos.json")).at("/0/width").asInt());
    assertEquals(1, files.keySet().stream().filter(f -> f.startsWith("grid-photos/")).count());
    JsonNode sample = JSON.readTree(files.get("samples.json")).get(0);
    assertTrue(sample.get("tag").asText().matches("\\w{3}-\\w"), sample.toString());
    assertEquals(report, sample.get("report_id").asText());
    assertTrue(
        JSON.readTree(files.get("eyewear.json")).get(0).get("marking").asText().contains("OD"));
    JsonNode room = JSON.readTree(files.get("rooms.json")).get(0);
    assertEquals(5, room.get("checks").size());
    assertEquals("60 m3", room.at("/written/volume/text").asText());
    assertEquals("The dog is outside.", room.at("/written/lines/0").asText());
    JsonNode lot = JSON.readTree(files.get("lots.json")).get(0);
    assertEquals(9, lot.get("received").asInt());
    JsonNode recipe = JSON.readTree(files.get("recipes.json")).get(0);
    assertTrue(recipe.at("/written/notes").asText().contains("behind the mill"));
    assertEquals(2, recipe.get("revisions").size());
    assertEquals("Mind the knots.", recipe.at("/written/steps/0").asText());
    JsonNode link = recipe.at("/links/0");
    assertEquals(2, link.get("version").asInt());
    assertTrue(!link.has("secret_hash") && link.has("opened_at"), link.toString());
    assertEquals("Jig", JSON.readTree(files.get("fixtures.json")).get(0).get("name").asText());
    JsonNode photo = JSON.readTree(files.get("kept-photos.json")).get(0);
    assertEquals(lot.get("id").asText(), photo.get("entry_id").asText());
    assertTrue(files.containsKey("kept-photos/" + lot.get("id").asText() + ".jpg"));
  }
}
