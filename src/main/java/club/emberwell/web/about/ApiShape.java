package club.emberwell.web.about;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import java.util.stream.Collectors;

/**
 * A named object of the API.
 *
 * @param about in a sentence; or empty
 * @param words its closed list where it is one of those
 */
public record ApiShape(String name, String about, List<Field> fields, List<String> words) {
  static final String SCHEMAS = "#/components/schemas/";

  /**
   * A field of an object or a parameter.
   *
   * @param shape the named object it holds, for a link; null where it holds none
   */
  public record Field(
      String name, String type, String shape, boolean required, String about, List<String> words) {}

  static ApiShape of(String name, JsonNode schema) {
    List<String> required =
        ApiReference.stream(schema.path("required")).map(JsonNode::asText).toList();
    List<Field> fields =
        schema.path("properties").properties().stream()
            .map(
                property ->
                    field(
                        property.getKey(),
                        property.getValue(),
                        required.contains(property.getKey()),
                        ApiReference.plain(property.getValue().path("description").asText())))
            .toList();
    String about = ApiReference.plain(schema.path("description").asText());
    return new ApiShape(name, about, fields, words(schema));
  }

  static Field field(String name, JsonNode schema, boolean required, String about) {
    return new Field(name, type(schema), named(schema), required, about, words(schema));
  }

  /** What may stand there, in a few words. */
  static String type(JsonNode schema) {
    if (schema.has("$ref")) {
      return name(schema.path("$ref").asText());
    }
    for (String choice : List.of("oneOf", "anyOf")) {
      if (schema.has(choice)) {
        return ApiReference.stream(schema.path(choice))
            .map(ApiShape::type)
            .collect(Collectors.joining(" or "));
      }
    }
    String type = schema.path("type").asText("any value");
    return switch (type) {
      case "array" -> "list of " + type(schema.path("items"));
      case "string" -> schema.path("format").asText("text");
      case "object" ->
          schema.path("additionalProperties").isObject()
              ? type(schema.path("additionalProperties")) + " by name"
              : "object";
      default -> type;
    };
  }

  /** The named object inside, as itself or in a list; null where there is none. */
  static String named(JsonNode schema) {
    List<String> references = schema.findValuesAsText("$ref");
    return references.isEmpty() ? null : name(references.get(0));
  }

  static String name(String reference) {
    return reference.substring(reference.lastIndexOf('/') + 1);
  }

  static JsonNode schema(JsonNode tree, String name) {
    return tree.path("components").path("schemas").path(name);
  }

  private static List<String> words(JsonNode schema) {
    JsonNode closed = schema.has("enum") ? schema : schema.path("items");
    return ApiReference.stream(closed.path("enum")).map(JsonNode::asText).toList();
  }
}
