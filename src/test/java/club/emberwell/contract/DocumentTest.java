package club.emberwell.contract;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.problem.ProblemKind;
import club.emberwell.api.contract.ApiTag;
import club.emberwell.api.json.CodesOpenApi;
import club.emberwell.laser.Effect;
import club.emberwell.laser.LaserSource;
import club.emberwell.laser.Process;
import club.emberwell.laser.Setting;
import club.emberwell.member.Scope;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.search.query.Facet;
import club.emberwell.search.query.Order;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;

/** Walks the description that {@code FrozenTest} holds to be the one that is served. */
class DocumentTest {
  private static final Set<String> VERBS = Set.of("get", "post", "put", "patch", "delete");
  private static final String SCHEMAS = "#/components/schemas/";

  private final JsonNode document = read();

  private record Operation(String name, JsonNode node) {}

  @Test
  void onlyOperationsOfTheApiAreDescribed() {
    document
        .path("paths")
        .fieldNames()
        .forEachRemaining(
            path -> assertTrue(path.startsWith("/api/v1/") && !path.contains("test-only"), path));
  }

  @Test
  void everyOperationHasANameOfItsOwnASummaryAndATagThatIsExplained() {
    Set<String> tags = new HashSet<>();
    for (JsonNode tag : document.path("tags")) {
      assertTrue(tag.path("description").asText().length() > 10, tag.toString());
      tags.add(tag.path("name").asText());
    }
    List<String> known = Stream.of(ApiTag.values()).map(ApiTag::label).toList();
    assertTrue(known.containsAll(tags), tags::toString);
    List<String> names = operations().map(o -> o.node().path("operationId").asText()).toList();
    assertEquals(names.size(), new HashSet<>(names).size(), "operation ids are told apart");
    assertEquals(
        List.of(),
        lacking(
            o ->
                o.path("operationId").asText().matches("[a-z][A-Za-z]+")
                    && !o.path("summary").asText().isBlank()
                    && o.path("tags").size() == 1
                    && tags.contains(o.path("tags").path(0).asText())));
  }

  @Test
  void everyOperationSaysWhatItAnswersAndWhichProblemsCome() {
    assertEquals(List.of(), lacking(DocumentTest::answersSomethingTyped));
    assertEquals(
        List.of(),
        lacking(
            o ->
                o.has("security")
                    && o.path("x-problems").size() > 4
                    && Stream.of("401", "403", "500", "503").allMatch(o.path("responses")::has)));
  }

  @Test
  void whatIsReferredToIsThereAndWhatIsThereIsReferredTo() {
    Set<String> used = new TreeSet<>();
    document.findValuesAsText("$ref").stream()
        .filter(reference -> reference.startsWith(SCHEMAS))
        .map(reference -> reference.substring(SCHEMAS.length()))
        .forEach(used::add);
    Set<String> there = new TreeSet<>();
    document.at("/components/schemas").fieldNames().forEachRemaining(there::add);
    assertEquals(there, used);
    assertEquals(
        List.of(),
        there.stream().filter(name -> !name.matches("[A-Z][A-Za-z]+")).toList(),
        "names that say what they are");
  }

  @Test
  void everySentObjectIsClosedAndEveryAnswerSaysWhatIsAlwaysThere() {
    assertEquals("false", schema("ReportRequest").path("additionalProperties").toString());
    assertEquals(List.of("process", "material"), texts(schema("ReportRequest").path("required")));
    assertTrue(texts(schema("Report").path("required")).containsAll(List.of("id", "state")));
    JsonNode quantity = schema("WrittenQuantity");
    assertEquals("string", quantity.at("/oneOf/0/type").asText());
    assertEquals(List.of("value", "unit"), texts(quantity.at("/oneOf/1/required")));
  }

  @Test
  void closedListsAreThoseOfTheCatalogues() {
    assertEquals(codes(Process.class), texts(schema("Process").path("enum")));
    assertEquals(codes(Effect.class), texts(schema("Effect").path("enum")));
    assertEquals(codes(LaserSource.class), texts(schema("LaserSource").path("enum")));
    assertEquals(
        codes(Process.class), texts(schema("ReportRequest").at("/properties/process/enum")));
    assertEquals(
        codes(Scope.class), texts(schema("TokenRequest").at("/properties/scopes/items/enum")));
    assertEquals(
        Stream.of(Setting.values()).map(Setting::code).sorted().toList(),
        fields(schema("WrittenSettings").path("properties")).stream().sorted().toList());
    assertEquals(codes(QuantityKind.class), words("/api/v1/quantities", "dimension"));
    assertEquals(codes(Order.class), words("/api/v1/reports", "sort"));
    List<String> asked =
        StreamSupport.stream(parameters("/api/v1/reports").spliterator(), false)
            .map(p -> p.path("name").asText())
            .toList();
    assertTrue(asked.containsAll(Stream.of(Facet.values()).map(Facet::code).toList()));
    assertEquals(
        Stream.of(ProblemKind.values()).map(ProblemKind::type).toList(),
        texts(schema("Problem").at("/properties/type/enum")));
  }

  private static boolean answersSomethingTyped(JsonNode operation) {
    List<JsonNode> done = new ArrayList<>();
    operation
        .path("responses")
        .properties()
        .forEach(
            answer -> {
              if (answer.getKey().startsWith("2")) {
                done.add(answer.getValue());
              }
            });
    return !done.isEmpty()
        && done.stream()
            .flatMap(answer -> answer.path("content").properties().stream())
            .noneMatch(media -> media.getValue().path("schema").isEmpty());
  }

  private List<String> lacking(Predicate<JsonNode> rule) {
    return operations().filter(o -> !rule.test(o.node())).map(Operation::name).toList();
  }

  private Stream<Operation> operations() {
    return document.path("paths").properties().stream()
        .flatMap(
            path ->
                path.getValue().properties().stream()
                    .filter(verb -> VERBS.contains(verb.getKey()))
                    .map(
                        verb ->
                            new Operation(verb.getKey() + " " + path.getKey(), verb.getValue())));
  }

  private JsonNode schema(String name) {
    return document.path("components").path("schemas").path(name);
  }

  private JsonNode parameters(String path) {
    return document.path("paths").path(path).path("get").path("parameters");
  }

  private List<String> words(String path, String parameter) {
    for (JsonNode each : parameters(path)) {
      if (each.path("name").asText().equals(parameter)) {
        return texts(each.at("/schema/enum"));
      }
    }
    return List.of();
  }

  private static List<String> codes(Class<?> words) {
    return CodesOpenApi.codes(words.getName()).stream().map(String::valueOf).toList();
  }

  private static List<String> fields(JsonNode object) {
    List<String> names = new ArrayList<>();
    object.fieldNames().forEachRemaining(names::add);
    return names;
  }

  private static List<String> texts(JsonNode list) {
    return StreamSupport.stream(list.spliterator(), false).map(JsonNode::asText).toList();
  }

  private static JsonNode read() {
    try (InputStream in = DocumentTest.class.getResourceAsStream("/frozen/openapi.json")) {
      return new ObjectMapper().readTree(in);
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }
}
