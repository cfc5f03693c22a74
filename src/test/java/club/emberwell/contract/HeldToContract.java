package club.emberwell.contract;

import club.emberwell.contract.Contract.Called;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import com.networknt.schema.ValidationMessage;
import io.restassured.RestAssured;
import io.restassured.filter.Filter;
import io.restassured.filter.FilterContext;
import io.restassured.response.Response;
import io.restassured.specification.FilterableRequestSpecification;
import io.restassured.specification.FilterableResponseSpecification;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * Holds every call of the API that a test makes by REST Assured, and its answer, to the document
 * the server gives of itself.
 */
public final class HeldToContract implements Filter {
  private static final ObjectMapper JSON = new ObjectMapper();

  /** {@code -Dcontract.deviations=FILE} writes them down instead of failing at the first. */
  private static final String COLLECTED = System.getProperty("contract.deviations");

  /** Headers that say something of the answer; what else there is comes from the transport. */
  private static final List<String> TELLING =
      List.of("ETag", "Location", "Retry-After", "Allow", "WWW-Authenticate", "Link");

  private static final int NOT_FOUND = 404;
  private static final int NO_SUCH_METHOD = 405;
  private static final int NOT_MODIFIED = 304;

  private static Contract contract;

  /** From now on all calls of this class loader are looked at. */
  public static void install() {
    RestAssured.replaceFiltersWith(new HeldToContract());
  }

  @Override
  public Response filter(
      FilterableRequestSpecification request,
      FilterableResponseSpecification expected,
      FilterContext context) {
    Response answer = context.next(request, expected);
    URI uri = URI.create(request.getURI());
    if (uri.getPath().startsWith("/api/v1/") && !request.getMethod().equals("OPTIONS")) {
      Set<String> deviations = new TreeSet<>();
      look(uri, request, answer, deviations);
      report(deviations);
    }
    return answer;
  }

  /** A failure, or a line of a file for whoever wants to see all at once. */
  private static void report(Set<String> deviations) {
    if (deviations.isEmpty()) {
      return;
    }
    String told = String.join("\n", deviations) + "\n";
    if (COLLECTED == null) {
      throw new AssertionError("The API is not as it describes itself:\n" + told);
    }
    try {
      Files.writeString(
          Path.of(COLLECTED), told, StandardOpenOption.CREATE, StandardOpenOption.APPEND);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** What the server says of itself. */
  public static Contract document() {
    return document(URI.create(RestAssured.baseURI + ":" + RestAssured.port));
  }

  /** Before a class begins, only a request itself knows where its server is. */
  private static synchronized Contract document(URI server) {
    if (contract == null) {
      URI there = server.resolve("/q/openapi?format=json");
      try (InputStream in = there.toURL().openStream()) {
        contract = new Contract(new String(in.readAllBytes(), StandardCharsets.UTF_8));
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
    return contract;
  }

  private static void look(
      URI uri, FilterableRequestSpecification request, Response answer, Set<String> deviations) {
    Contract document = document(uri);
    int status = answer.statusCode();
    Optional<Called> found = document.called(request.getMethod(), uri.getPath());
    if (found.isEmpty()) {
      if (status != NOT_FOUND && status != NO_SUCH_METHOD) {
        deviations.add(
            request.getMethod() + " " + uri.getPath() + " " + status + " is described nowhere");
      }
      return;
    }
    Called called = found.get();
    List<String> odd = new ArrayList<>();
    if (status < 300) {
      new Asked(document, called).look(uri, request, odd);
    }
    new Told(document, called).look(answer, request.getMethod().equals("HEAD"), odd);
    odd.forEach(each -> deviations.add(called.name() + " " + each));
  }

  /** A request that was accepted. */
  private record Asked(Contract document, Called called) {

    void look(URI uri, FilterableRequestSpecification request, List<String> odd) {
      called.places().forEach((name, value) -> fits("path", name, List.of(value), odd));
      Map<String, List<String>> query = query(uri);
      query.forEach((name, values) -> fits("query", name, values, odd));
      required("query", query.keySet(), odd);
      Set<String> headers = new TreeSet<>(String.CASE_INSENSITIVE_ORDER);
      request.getHeaders().forEach(header -> headers.add(header.getName()));
      required("header", headers, odd);
      body(request, odd);
    }

    private void required(String in, Set<String> sent, List<String> odd) {
      document
          .parameters(called, in)
          .forEach(
              (name, place) -> {
                if (document.at(place + "/required").asBoolean() && !sent.contains(name)) {
                  odd.add("is answered without " + in + " " + name);
                }
              });
    }

    private void fits(String in, String name, List<String> values, List<String> odd) {
      String place = document.parameters(called, in).get(name);
      if (place == null) {
        odd.add("takes " + in + " " + name + " that is not described");
        return;
      }
      if (readings(values).stream()
          .noneMatch(each -> document.misfits(place + "/schema", each).isEmpty())) {
        odd.add("takes " + in + " " + name + "=" + values + " against its schema");
      }
    }

    /** What a text in an address may mean: texts or other values, one or a list. */
    private static List<JsonNode> readings(List<String> values) {
      ArrayNode texts = JSON.createArrayNode();
      ArrayNode scalars = JSON.createArrayNode();
      for (String value : values) {
        texts.add(value);
        scalars.add(scalar(value));
      }
      return values.size() == 1
          ? List.of(texts.get(0), scalars.get(0), texts, scalars)
          : List.of(texts, scalars);
    }

    private static JsonNode scalar(String value) {
      try {
        JsonNode read = JSON.readTree(value);
        return read.isValueNode() ? read : TextNode.valueOf(value);
      } catch (JsonProcessingException e) {
        return TextNode.valueOf(value);
      }
    }

    private static Map<String, List<String>> query(URI uri) {
      Map<String, List<String>> query = new LinkedHashMap<>();
      String raw = uri.getRawQuery();
      if (raw != null && !raw.isEmpty()) {
        for (String pair : raw.split("&")) {
          String[] sides = pair.split("=", 2);
          query
              .computeIfAbsent(decoded(sides[0]), name -> new ArrayList<>())
              .add(sides.length > 1 ? decoded(sides[1]) : "");
        }
      }
      return query;
    }

    private static String decoded(String text) {
      return URLDecoder.decode(text, StandardCharsets.UTF_8);
    }

    private void body(FilterableRequestSpecification request, List<String> odd) {
      Object body = request.getBody();
      String place = document.place(called.pointer() + "/requestBody");
      JsonNode described = document.at(place);
      if (described.isMissingNode()) {
        return;
      }
      if (body == null) {
        if (request.getMultiPartParams().isEmpty() && described.path("required").asBoolean()) {
          odd.add("asks without the body it should have");
        }
        return;
      }
      String type = mediaType(request.getContentType());
      if (!described.path("content").has(type)) {
        odd.add("takes " + type + " that is not described");
      } else if (isJson(type)) {
        misfits(document, place + content(type), "asks", given(read(String.valueOf(body))), odd);
      }
    }
  }

  /** What is null in a request is not given; between the values of a list it has a meaning. */
  private static JsonNode given(JsonNode sent) {
    if (sent instanceof ObjectNode object) {
      object.removeIf(JsonNode::isNull);
    }
    sent.forEach(HeldToContract::given);
    return sent;
  }

  /** An answer, whatever its status. */
  private record Told(Contract document, Called called) {

    void look(Response answer, boolean head, List<String> odd) {
      int status = answer.statusCode();
      String pointer = document.place(called.pointer() + "/responses/" + status);
      JsonNode described = document.at(pointer);
      if (described.isMissingNode()) {
        odd.add(status + " is not described");
        return;
      }
      headers(answer, pointer + "/headers", odd);
      String type = mediaType(answer.contentType());
      byte[] body = answer.asByteArray();
      JsonNode content = described.path("content");
      if (body.length == 0) {
        if (!head && status != NOT_MODIFIED && !content.isEmpty()) {
          odd.add(status + " has no body");
        }
      } else if (!content.has(type)) {
        odd.add(status + " answers " + type + " that is not described");
      } else if (isJson(type)) {
        misfits(
            document,
            pointer + content(type),
            String.valueOf(status),
            read(new String(body, StandardCharsets.UTF_8)),
            odd);
      }
    }

    private void headers(Response answer, String pointer, List<String> odd) {
      JsonNode described = document.at(pointer);
      described
          .fieldNames()
          .forEachRemaining(
              name -> {
                String place = document.place(pointer + "/" + name);
                if (document.at(place + "/required").asBoolean() && answer.header(name) == null) {
                  odd.add(answer.statusCode() + " has no " + name);
                }
              });
      for (String name : TELLING) {
        if (answer.header(name) != null && !described.has(name)) {
          odd.add(answer.statusCode() + " has " + name + " that is not described");
        }
      }
    }
  }

  private static void misfits(
      Contract document, String pointer, String what, JsonNode body, List<String> odd) {
    if (document.at(pointer).isEmpty()) {
      odd.add(what + ": any body at all is described");
      return;
    }
    for (ValidationMessage each : document.misfits(pointer, body)) {
      odd.add(what + each.getMessage().replaceAll("/\\d+(?=[/:])", "/*"));
    }
  }

  /** What is no JSON is taken as a text, which no schema of a body allows. */
  private static JsonNode read(String body) {
    try {
      return JSON.readTree(body);
    } catch (JsonProcessingException e) {
      return TextNode.valueOf(body);
    }
  }

  private static String content(String type) {
    return "/content/" + Contract.part(type) + "/schema";
  }

  private static String mediaType(String header) {
    return header == null ? "" : header.replaceFirst(";.*", "").strip().toLowerCase(Locale.ROOT);
  }

  private static boolean isJson(String type) {
    return type.equals("application/json") || type.endsWith("+json");
  }
}
