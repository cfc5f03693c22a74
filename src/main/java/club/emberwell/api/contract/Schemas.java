package club.emberwell.api.contract;

import java.util.ArrayDeque;
import java.util.Collection;
import java.util.Deque;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.eclipse.microprofile.openapi.models.Components;
import org.eclipse.microprofile.openapi.models.Operation;
import org.eclipse.microprofile.openapi.models.media.Content;
import org.eclipse.microprofile.openapi.models.media.MediaType;
import org.eclipse.microprofile.openapi.models.media.Schema;

/** The named schemas of a document, and who refers to whom. */
final class Schemas {
  /** What a request writes a quantity as. */
  static final String SENT_QUANTITY = "WrittenQuantity";

  private final Components components;

  Schemas(Components components) {
    this.components = components;
  }

  Map<String, Schema> all() {
    return components.getSchemas();
  }

  /** The schema itself where it is a reference; null where it refers to nothing. */
  Schema resolved(Schema schema) {
    return schema == null || schema.getRef() == null ? schema : all().get(name(schema));
  }

  /** The last part of a reference. */
  static String name(Schema reference) {
    return reference.getRef().substring(reference.getRef().lastIndexOf('/') + 1);
  }

  boolean has(Schema schema, String property) {
    Schema whole = resolved(schema);
    return whole != null
        && whole.getProperties() != null
        && whole.getProperties().containsKey(property);
  }

  boolean reaches(Schema from, String name) {
    return from != null && reachable(List.of(from)).contains(name);
  }

  /** The names of all that is referred to, directly or not. */
  Set<String> reachable(Collection<Schema> from) {
    Set<String> names = new LinkedHashSet<>();
    Deque<Schema> open = new ArrayDeque<>(from);
    while (!open.isEmpty()) {
      walk(
          open.pop(),
          schema -> {
            if (schema.getRef() != null && names.add(name(schema)) && resolved(schema) != null) {
              open.push(resolved(schema));
            }
          });
    }
    return names;
  }

  /** Visits a schema and all inside it, not beyond references. */
  static void walk(Schema schema, Consumer<Schema> visit) {
    if (schema == null) {
      return;
    }
    visit.accept(schema);
    parts(schema).forEach(part -> walk(part, visit));
  }

  private static Stream<Schema> parts(Schema schema) {
    Stream<Schema> one =
        Stream.of(schema.getItems(), schema.getAdditionalPropertiesSchema())
            .filter(Objects::nonNull);
    Stream<Schema> several =
        Stream.of(schema.getAllOf(), schema.getAnyOf(), schema.getOneOf())
            .filter(Objects::nonNull)
            .flatMap(Collection::stream);
    Stream<Schema> properties =
        schema.getProperties() == null ? Stream.of() : schema.getProperties().values().stream();
    return Stream.of(one, several, properties).flatMap(s -> s);
  }

  /** What an operation takes as its body. */
  static List<Schema> sent(Operation operation) {
    return operation.getRequestBody() == null
        ? List.of()
        : of(operation.getRequestBody().getContent());
  }

  /** What it answers where it is done. */
  static List<Schema> answered(Operation operation) {
    return operation.getResponses().getAPIResponses().values().stream()
        .flatMap(answer -> of(answer.getContent()).stream())
        .toList();
  }

  static List<Schema> of(Content content) {
    return content == null || content.getMediaTypes() == null
        ? List.of()
        : content.getMediaTypes().values().stream()
            .map(MediaType::getSchema)
            .filter(Objects::nonNull)
            .toList();
  }
}
