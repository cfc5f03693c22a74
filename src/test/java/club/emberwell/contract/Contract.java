package club.emberwell.contract;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.JsonMetaSchema;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.NonValidationKeyword;
import com.networknt.schema.PathType;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaValidatorsConfig;
import com.networknt.schema.SpecVersion.VersionFlag;
import com.networknt.schema.ValidationMessage;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * The operations and schemas of an OpenAPI 3.1 document, as strict as a reader takes them: an
 * object has the properties that are described and no others.
 */
public final class Contract {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final String ADDRESS = "https://club.example/openapi.json";
  private static final Pattern PLACE = Pattern.compile("\\{(\\w+)}");

  private static final List<String> METHODS = List.of("get", "post", "put", "delete");

  /** What OpenAPI says beside JSON Schema is no reason to warn. */
  private static final JsonMetaSchema SILENT =
      JsonMetaSchema.builder(JsonMetaSchema.getV202012())
          .unknownKeywordFactory((name, context) -> new NonValidationKeyword(name))
          .build();

  private static final SchemaValidatorsConfig CONFIG =
      SchemaValidatorsConfig.builder()
          .pathType(PathType.JSON_POINTER)
          .formatAssertionsEnabled(true)
          .cacheRefs(true)
          .build();

  /** An operation with the values its address has in the places of a path. */
  record Called(String method, Route route, JsonNode described, Map<String, String> places) {
    /** Its name among deviations. */
    String name() {
      return method.toUpperCase(Locale.ROOT) + " " + route.path;
    }

    /** Where it stands in the document. */
    String pointer() {
      return "/paths/" + part(route.path) + "/" + method;
    }
  }

  /** A path of the document. */
  record Route(String path, Pattern pattern, List<String> names) {}

  private final JsonNode document;
  private final List<Route> routes = new ArrayList<>();
  private final JsonSchema schema;
  private final Map<String, JsonSchema> parsed = new ConcurrentHashMap<>();

  Contract(String text) {
    try {
      document = JSON.readTree(text);
      close(document);
      schema =
          JsonSchemaFactory.getInstance(VersionFlag.V202012, builder -> builder.metaSchema(SILENT))
              .getSchema(SchemaLocation.of(ADDRESS), document, CONFIG);
    } catch (JsonProcessingException e) {
      throw new IllegalArgumentException(e);
    }
    document.get("paths").fieldNames().forEachRemaining(path -> routes.add(route(path)));
    routes.sort(Comparator.comparingInt((Route route) -> route.names.size()));
  }

  private static Route route(String path) {
    List<String> names =
        PLACE.matcher(path).results().map(found -> found.group(1)).collect(Collectors.toList());
    String pattern = PLACE.matcher("\\Q" + path + "\\E").replaceAll("\\\\E([^/]+)\\\\Q");
    return new Route(path, Pattern.compile(pattern), names);
  }

  /** Objects whose properties are listed take no others, unless the document says they do. */
  private static void close(JsonNode node) {
    if (node instanceof ObjectNode object
        && object.path("properties").isObject()
        && !object.has("additionalProperties")) {
      object.put("additionalProperties", false);
    }
    node.forEach(Contract::close);
  }

  /** The operation that answers here; none where the document has none. */
  Optional<Called> called(String method, String path) {
    String verb = method.equals("HEAD") ? "get" : method.toLowerCase(Locale.ROOT);
    for (Route route : routes) {
      Matcher fits = route.pattern.matcher(path);
      JsonNode described = document.get("paths").get(route.path).get(verb);
      if (described != null && fits.matches()) {
        Map<String, String> places = new LinkedHashMap<>();
        for (int i = 0; i < route.names.size(); i++) {
          places.put(route.names.get(i), fits.group(i + 1));
        }
        return Optional.of(new Called(verb, route, described, places));
      }
    }
    return Optional.empty();
  }

  /** The id of the operation that answers here; else its method and path. */
  public String operation(String method, String path) {
    return called(method, path)
        .map(found -> found.described.path("operationId").asText(found.name()))
        .orElseThrow();
  }

  /** The ids of all operations, or their methods and paths. */
  public Set<String> operations() {
    Set<String> all = new TreeSet<>();
    for (Route route : routes) {
      for (String method : METHODS) {
        JsonNode described = document.at("/paths/" + part(route.path) + "/" + method);
        if (!described.isMissingNode() && route.path.startsWith("/api/v1/")) {
          String name = new Called(method, route, described, Map.of()).name();
          all.add(described.path("operationId").asText(name));
        }
      }
    }
    return all;
  }

  /** Where the parameters of an operation stand that are in the path, the query or a header. */
  Map<String, String> parameters(Called called, String in) {
    Map<String, String> found = new LinkedHashMap<>();
    String shared = "/paths/" + part(called.route.path) + "/parameters";
    for (String list : List.of(shared, called.pointer() + "/parameters")) {
      for (int i = 0; i < document.at(list).size(); i++) {
        String place = place(list + "/" + i);
        if (document.at(place + "/in").asText().equals(in)) {
          found.put(document.at(place + "/name").asText(), place);
        }
      }
    }
    return found;
  }

  /** Where a thing that may be a reference stands in the document, as a JSON pointer. */
  String place(String pointer) {
    String reference = document.at(pointer).path("$ref").asText("");
    return reference.isEmpty() ? pointer : reference.substring(1);
  }

  /** The thing at a pointer. */
  JsonNode at(String pointer) {
    return document.at(pointer);
  }

  /** A name as a part of a pointer. */
  static String part(String name) {
    return name.replace("~", "~0").replace("/", "~1");
  }

  /** What of a value does not fit the schema at a pointer. */
  Set<ValidationMessage> misfits(String pointer, JsonNode value) {
    return parsed
        .computeIfAbsent(
            pointer, at -> schema.getRefSchema(SchemaLocation.of(ADDRESS + "#" + at).getFragment()))
        .validate(value);
  }
}
