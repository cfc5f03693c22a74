package club.emberwell.api.contract;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Optional;
import org.eclipse.microprofile.openapi.models.Operation;
import org.eclipse.microprofile.openapi.models.media.Content;
import org.eclipse.microprofile.openapi.models.responses.APIResponse;

/**
 * One example for each operation, as the tests' little club recorded it: {@code
 * api-examples/<operationId>.json} with {@code request}, {@code status} and {@code answer}.
 */
final class Examples {
  private static final String JSON = "application/json";

  private final ObjectMapper json = new ObjectMapper();

  /** Puts the recorded example in; an operation without one stays as it is. */
  void add(Operation operation) {
    recorded(operation.getOperationId())
        .ifPresent(
            call -> {
              if (operation.getRequestBody() != null) {
                put(operation.getRequestBody().getContent(), call.path("request"));
              }
              APIResponse answer =
                  operation.getResponses().getAPIResponse(call.path("status").asText());
              if (answer != null) {
                put(answer.getContent(), call.path("answer"));
              }
            });
  }

  private void put(Content content, JsonNode example) {
    boolean fits = content != null && content.hasMediaType(JSON);
    if (fits && !example.isMissingNode() && !example.isNull()) {
      content.getMediaType(JSON).setExample(json.convertValue(example, Object.class));
    }
  }

  private Optional<JsonNode> recorded(String operation) {
    String file = "api-examples/" + operation + ".json";
    try (InputStream in = Examples.class.getClassLoader().getResourceAsStream(file)) {
      return in == null ? Optional.empty() : Optional.of(json.readTree(in));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
