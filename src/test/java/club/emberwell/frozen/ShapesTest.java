package club.emberwell.frozen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.api.json.ClubModule;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** One shape each, in all answers of the little club: a list, a member, a time, a power. */
class ShapesTest {
  private static final Path ANSWERS = Path.of("src/test/resources/frozen/answers");
  private static final ObjectMapper JSON = new ObjectMapper().registerModule(new ClubModule());

  /** What says the same as another word that all other answers use. */
  private static final Map<String, String> OTHER_WORDS =
      Map.ofEntries(
          Map.entry("more", "next, or unlisted"),
          Map.entry("author", "member"),
          Map.entry("authorId", "member"),
          Map.entry("who", "by"),
          Map.entry("editor", "by"),
          Map.entry("why", "reason"),
          Map.entry("since", "createdAt"),
          Map.entry("joined", "createdAt"),
          Map.entry("created", "createdAt"),
          Map.entry("updated", "updatedAt"),
          Map.entry("slug", "value"),
          Map.entry("field", "pointer"),
          Map.entry("entity", "kind"),
          Map.entry("entityId", "id"));

  /** Bodies as they may be sent; a power is a text there, or value and unit. */
  private static final Set<String> SENT = Set.of("written", "next");

  private final List<String> wrong = new ArrayList<>();

  @Test
  void everyAnswerHasTheOneShape() throws IOException {
    answers().forEach((name, answer) -> look(name, "", answer));
    assertEquals(List.of(), wrong);
  }

  @Test
  void everyEntryTellsItsStateAndItsTimes() throws IOException {
    Set<String> kinds = new TreeSet<>();
    answers().forEach((name, answer) -> entries(name, answer, kinds));
    assertEquals(List.of(), wrong);
    assertTrue(kinds.containsAll(Set.of("report", "question", "notice")), kinds.toString());
  }

  @Test
  void aTimeHasAlwaysSixDecimals() throws IOException {
    assertEquals("\"2026-11-26T11:39:00.000000Z\"", time("2026-11-26T11:39:00Z"));
    assertEquals("\"2026-11-26T11:39:00.120000Z\"", time("2026-11-26T11:39:00.12Z"));
    assertEquals("\"2026-11-26T11:39:00.123456Z\"", time("2026-11-26T11:39:00.123456789Z"));
  }

  private static String time(String time) throws IOException {
    return JSON.writeValueAsString(Instant.parse(time));
  }

  /** All that went well. */
  private static Map<String, JsonNode> answers() throws IOException {
    Map<String, JsonNode> answers = new TreeMap<>();
    try (Stream<Path> files = Files.list(ANSWERS)) {
      for (Path file : files.toList()) {
        String text = Files.readString(file);
        int body = text.indexOf("\n{");
        if (text.contains("\n200\n") && text.contains("application/json") && body > 0) {
          answers.put(file.getFileName().toString(), JSON.readTree(text.substring(body)));
        } else {
          assertTrue(!text.contains("\n[ {"), file + " is a bare list");
        }
      }
    }
    assertTrue(answers.size() > 60, "answers: " + answers.size());
    return answers;
  }

  private void look(String file, String name, JsonNode node) {
    if (node.isArray()) {
      node.forEach(each -> look(file, name, each));
    } else if (node.isObject()) {
      // a search alone is also read by number
      check(!node.has("page") || node.has("hits"), file, "page", "next");
      node.properties().forEach(field -> part(file, field.getKey(), field.getValue()));
    } else if (node.isTextual()) {
      check(!node.asText().contains("<other-time>"), file, name, "a time with six decimals");
    }
  }

  private void part(String file, String name, JsonNode value) {
    check(!OTHER_WORDS.containsKey(name), file, name, OTHER_WORDS.get(name));
    check(!value.isNull(), file, name, "nothing where nothing is known");
    switch (name) {
      case "member", "by" -> check(value.path("handle").isTextual(), file, name, "a member");
      case "rows" -> check(value.isInt(), file, name, "items, but for the rows of a grid");
      case "items" -> check(value.isArray(), file, name, "a list");
      case "unit" -> check(value.asText().matches("[^1].*"), file, name, "a unit");
      case "power" -> power(file, name, value, "W");
      case "powerPercent" -> power(file, name, value, "%");
      default -> check(!name.endsWith("At") || isTime(value), file, name, "a time");
    }
    // a facet's values go by its code, whatever the code says elsewhere; a body as sent is no
    // answer
    if (!SENT.contains(name) && !name.equals("facets")) {
      look(file, name, value);
    }
  }

  /** A quantity, a range of them, its voices, or the plain number of a line. */
  private void power(String file, String name, JsonNode value, String unit) {
    boolean fits = value.isNumber() || value.isArray() || value.path("unit").asText().equals(unit);
    check(fits, file, name, "in " + unit);
  }

  private static boolean isTime(JsonNode value) {
    return value.asText().equals("<time>");
  }

  private void entries(String file, JsonNode node, Set<String> kinds) {
    node.forEach(each -> entries(file, each, kinds));
    boolean talk = node.has("kind") && node.has("version") && node.has("text");
    boolean report = node.has("process") && node.has("version") && node.has("laser");
    if (talk || report) {
      kinds.add(talk ? node.path("kind").asText() : "report");
      check(node.has("state"), file, "state", "there");
      check(isTime(node.path("createdAt")), file, "createdAt", "there");
      check(isTime(node.path("updatedAt")), file, "updatedAt", "there");
    }
  }

  private void check(boolean right, String file, String name, String wanted) {
    if (!right) {
      wrong.add(file + ": " + name + " should be " + wanted);
    }
  }
}
