package club.emberwell.web.about;

import club.emberwell.web.about.ApiReference.Called;
import com.fasterxml.jackson.databind.JsonNode;
import java.util.Optional;

/**
 * How an operation is called, and what it answered.
 *
 * @param curl to be pasted into a shell
 * @param answer as JSON; empty where none was recorded
 */
public record ApiExample(String curl, String answer) {
  /**
   * @param address of the operation at this club
   */
  static ApiExample of(Called called, String address, JsonNode operation) {
    StringBuilder curl = new StringBuilder("curl -s");
    if (!called.verb().equals("GET")) {
      curl.append(" -X ").append(called.verb());
    }
    if (!operation.path("security").isEmpty()) {
      curl.append(" \\\n  -H \"Authorization: Bearer $TOKEN\"");
    }
    for (JsonNode parameter : operation.path("parameters")) {
      if (parameter.path("in").asText().equals("header")
          && parameter.path("required").asBoolean()) {
        String name = parameter.path("name").asText();
        curl.append(" \\\n  -H '")
            .append(name)
            .append(name.equals("If-Match") ? ": \"1\"'" : ": 7c0b1d8e-made-by-you'");
      }
    }
    JsonNode sent = operation.path("requestBody").path("content").path("application/json");
    example(sent)
        .ifPresent(
            body ->
                curl.append(" \\\n  -H 'Content-Type: application/json' \\\n  -d '")
                    .append(body.toPrettyString().replace("'", "'\\''"))
                    .append('\''));
    curl.append(" \\\n  '").append(address).append('\'');
    String answer =
        operation.path("responses").properties().stream()
            .filter(each -> each.getKey().startsWith("2"))
            .map(each -> each.getValue().path("content").path("application/json"))
            .flatMap(media -> example(media).stream())
            .findFirst()
            .map(JsonNode::toPrettyString)
            .orElse("");
    return new ApiExample(curl.toString(), answer);
  }

  private static Optional<JsonNode> example(JsonNode media) {
    return media.has("example") ? Optional.of(media.path("example")) : Optional.empty();
  }
}
