package club.emberwell.web.about;

import club.emberwell.access.PublicUrl;
import club.emberwell.access.contract.ApiDocument;
import club.emberwell.access.problem.ProblemKind;
import club.emberwell.remark.Coded;
import com.fasterxml.jackson.databind.JsonNode;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;

/** The API's description as its pages show it, one page for each tag. */
@ApplicationScoped
public class ApiReference {
  private static final Set<String> VERBS = Set.of("get", "post", "put", "patch", "delete");

  private final Map<String, Part> parts = new LinkedHashMap<>();

  ApiReference(ApiDocument document, PublicUrl url) {
    JsonNode tree = document.tree();
    for (JsonNode tag : tree.path("tags")) {
      String label = tag.path("name").asText();
      List<Deed> deeds = deeds(tree, label, url);
      if (!deeds.isEmpty()) {
        String slug = label.toLowerCase(Locale.ROOT);
        String about = tag.path("description").asText();
        parts.put(slug, new Part(slug, label, about, deeds, shapes(tree, label)));
      }
    }
  }

  /** What stands on one page. */
  public record Part(
      String slug, String label, String about, List<Deed> deeds, List<ApiShape> shapes) {}

  /**
   * One operation.
   *
   * @param who may do it, in a sentence
   * @param problems that can come
   */
  public record Deed(
      Called called,
      String who,
      List<ApiShape.Field> parameters,
      List<Told> sent,
      List<Told> answers,
      List<ProblemKind> problems,
      ApiExample example) {}

  /** Its name and place. */
  public record Called(String id, String verb, String path, String summary, String text) {}

  /**
   * A body.
   *
   * @param status of an answer; empty for what is sent
   * @param shape of its fields on the same page; null where it has none
   */
  public record Told(String status, String format, String type, String shape) {}

  /** In the order of the document. */
  public List<Part> parts() {
    return List.copyOf(parts.values());
  }

  public Optional<Part> part(String slug) {
    return Optional.ofNullable(parts.get(slug));
  }

  private static List<Deed> deeds(JsonNode tree, String tag, PublicUrl url) {
    List<Deed> deeds = new ArrayList<>();
    operations(tree, tag)
        .forEach(
            at -> {
              JsonNode operation = at.operation();
              Called called =
                  new Called(
                      operation.path("operationId").asText(),
                      at.verb().toUpperCase(Locale.ROOT),
                      at.path(),
                      operation.path("summary").asText(),
                      plain(operation.path("description").asText()));
              deeds.add(
                  new Deed(
                      called,
                      who(operation),
                      parameters(operation),
                      bodies("", operation.path("requestBody")),
                      answers(operation),
                      problems(operation),
                      ApiExample.of(called, url.of(called.path()), operation)));
            });
    return deeds;
  }

  private record Place(String path, String verb, JsonNode operation) {}

  private static Stream<Place> operations(JsonNode tree, String tag) {
    return tree.path("paths").properties().stream()
        .flatMap(
            path ->
                path.getValue().properties().stream()
                    .filter(verb -> VERBS.contains(verb.getKey()))
                    .map(verb -> new Place(path.getKey(), verb.getKey(), verb.getValue())))
        .filter(place -> place.operation().path("tags").path(0).asText().equals(tag));
  }

  private static String who(JsonNode operation) {
    JsonNode security = operation.path("security");
    if (security.isEmpty()) {
      return "Anybody.";
    }
    List<String> scopes = new ArrayList<>();
    security.forEach(way -> way.path("token").forEach(scope -> scopes.add(scope.asText())));
    String token = "a token with the scope " + String.join(" and ", scopes);
    return switch (operation.path("x-role").asText()) {
      case "reader" -> "Anybody where the club reads in public, else " + token + ".";
      case "moderator" -> "Moderators, with " + token + ".";
      case "owner" -> "Owners, with " + token + ".";
      default -> "Members, with " + token + ".";
    };
  }

  private static List<ApiShape.Field> parameters(JsonNode operation) {
    return stream(operation.path("parameters"))
        .map(
            p ->
                ApiShape.field(
                    p.path("name").asText(),
                    p.path("schema"),
                    p.path("required").asBoolean(),
                    p.path("in").asText() + ". " + plain(p.path("description").asText())))
        .toList();
  }

  private static List<Told> answers(JsonNode operation) {
    return operation.path("responses").properties().stream()
        .filter(answer -> answer.getKey().startsWith("2"))
        .flatMap(
            answer -> {
              List<Told> bodies = bodies(answer.getKey(), answer.getValue());
              return bodies.isEmpty()
                  ? Stream.of(new Told(answer.getKey(), "", "nothing", null))
                  : bodies.stream();
            })
        .toList();
  }

  private static List<Told> bodies(String status, JsonNode holder) {
    return holder.path("content").properties().stream()
        .map(
            media -> {
              JsonNode schema = media.getValue().path("schema");
              return new Told(
                  status, media.getKey(), ApiShape.type(schema), ApiShape.named(schema));
            })
        .toList();
  }

  private static List<ProblemKind> problems(JsonNode operation) {
    return stream(operation.path("x-problems"))
        .flatMap(code -> Coded.of(ProblemKind.class, code.asText()).stream())
        .toList();
  }

  /** All that the operations of a page refer to. */
  private static List<ApiShape> shapes(JsonNode tree, String tag) {
    Set<String> names = new LinkedHashSet<>();
    operations(tree, tag)
        .forEach(
            place -> {
              JsonNode operation = place.operation();
              collect(tree, operation.path("requestBody"), names);
              operation.path("responses").forEach(answer -> collect(tree, answer, names));
            });
    return names.stream()
        .filter(name -> !name.equals("Problem"))
        .sorted()
        .map(name -> ApiShape.of(name, ApiShape.schema(tree, name)))
        .toList();
  }

  private static void collect(JsonNode tree, JsonNode from, Set<String> names) {
    for (String reference : from.findValuesAsText("$ref")) {
      String name = ApiShape.name(reference);
      if (reference.startsWith(ApiShape.SCHEMAS) && names.add(name)) {
        collect(tree, ApiShape.schema(tree, name), names);
      }
    }
  }

  /** The description's Markdown has nothing but code in it. */
  static String plain(String text) {
    return text.replace("`", "");
  }

  static Stream<JsonNode> stream(JsonNode list) {
    return StreamSupport.stream(list.spliterator(), false);
  }
}
