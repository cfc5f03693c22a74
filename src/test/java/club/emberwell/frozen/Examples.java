package club.emberwell.frozen;

import club.emberwell.contract.HeldToContract;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.restassured.response.Response;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * What was sent to each operation of the API and what it answered, the first time it went well or
 * where a step says {@code example: true}: the examples of the API's description. Of lists the
 * first two remain; whatever each run makes anew is replaced by something fixed that looks alike.
 */
final class Examples {
  /** Two need a letter, one a club without an owner; the last would hold itself. */
  private static final Set<String> WITHOUT =
      Set.of("askPasswordReset", "confirmEmail", "foundClub", "getDescription");

  private static final int LISTED = 2;
  private static final int REFUSED = 300;
  private static final ObjectMapper JSON = new ObjectMapper();

  private final Saved saved;
  private final Map<String, ObjectNode> seen = new TreeMap<>();

  Examples(Saved saved) {
    this.saved = saved;
  }

  /** Remembers a call. */
  void saw(String verb, String path, Object sent, boolean chosen, Response answer) {
    if (answer.statusCode() >= REFUSED || !path.startsWith("/api/v1/")) {
      return;
    }
    String operation = HeldToContract.document().operation(verb, path.replaceFirst("\\?.*", ""));
    if (chosen || !seen.containsKey(operation)) {
      ObjectNode example = JSON.createObjectNode();
      if (sent != null) {
        example.set("request", JSON.valueToTree(sent));
      }
      example.put("status", answer.statusCode());
      if (String.valueOf(answer.contentType()).matches("application/json(;.*)?")) {
        example.set("answer", shortened(read(LittleClub.rounded(answer.asString()))));
      }
      seen.put(operation, example);
    }
  }

  private static JsonNode shortened(JsonNode value) {
    if (value instanceof ArrayNode list) {
      while (list.size() > LISTED) {
        list.remove(list.size() - 1);
      }
    }
    value.forEach(Examples::shortened);
    return value;
  }

  private static JsonNode read(String json) {
    try {
      return JSON.readTree(json);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(json, e);
    }
  }

  /** The text of each file by its name. */
  Map<String, String> files() {
    Map<String, String> files = new TreeMap<>();
    seen.forEach(
        (operation, example) ->
            files.put(
                operation + ".json", saved.alike(operation, example.toPrettyString()) + "\n"));
    return files;
  }

  /** Operations of the API that no step went through, but should. */
  Set<String> missing() {
    Set<String> missing = new TreeSet<>(HeldToContract.document().operations());
    missing.removeAll(seen.keySet());
    missing.removeAll(WITHOUT);
    return missing;
  }
}
