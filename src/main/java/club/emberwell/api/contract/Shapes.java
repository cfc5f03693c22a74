package club.emberwell.api.contract;

import club.emberwell.api.json.CodesOpenApi;
import com.fasterxml.jackson.annotation.JsonAnyGetter;
import com.fasterxml.jackson.annotation.JsonIgnore;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.lang.annotation.Annotation;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.eclipse.microprofile.openapi.models.media.Schema;
import org.jboss.jandex.AnnotationInstance;
import org.jboss.jandex.ClassInfo;
import org.jboss.jandex.DotName;
import org.jboss.jandex.IndexView;
import org.jboss.jandex.MethodInfo;
import org.jboss.jandex.RecordComponentInfo;
import org.jboss.jandex.Type;
import org.jspecify.annotations.Nullable;

/**
 * Which properties of an answer are always there: all but those that their record says may be null,
 * and those that are left out where they are empty.
 */
final class Shapes {
  private static final Set<String> OFTEN_EMPTY =
      Set.of(
          "java.lang.String",
          "java.util.List",
          "java.util.Set",
          "java.util.Map",
          "java.util.Collection");

  private final Map<String, List<ClassInfo>> types;
  private final IndexView index;

  Shapes(IndexView index) {
    this.index = index;
    types =
        index.getKnownClasses().stream()
            .filter(type -> type.name().toString().startsWith("club.emberwell."))
            .filter(type -> type.isRecord() || type.isEnum())
            .collect(Collectors.groupingBy(Shapes::name));
  }

  private static String name(ClassInfo type) {
    AnnotationInstance schema =
        type.declaredAnnotation(
            DotName.createSimple("org.eclipse.microprofile.openapi.annotations.media.Schema"));
    return schema != null && schema.value("name") != null
        ? schema.value("name").asString()
        : type.simpleName();
  }

  /**
   * The record or enum a schema was made of.
   *
   * @param name as generated: a number at its end tells types of one name apart
   */
  Optional<ClassInfo> type(String name, Schema schema) {
    List<ClassInfo> named =
        types.getOrDefault(name, types.getOrDefault(name.replaceAll("\\d+$", ""), List.of()));
    if (schema.getEnumeration() != null) {
      Set<Object> words = Set.copyOf(schema.getEnumeration());
      return named.stream()
          .filter(ClassInfo::isEnum)
          .filter(type -> Set.copyOf(CodesOpenApi.codes(type.name().toString())).equals(words))
          .findFirst();
    }
    if (schema.getProperties() == null) {
      return Optional.empty();
    }
    Set<String> there = schema.getProperties().keySet();
    return named.stream()
        .filter(ClassInfo::isRecord)
        .filter(type -> there.containsAll(properties(type).keySet()))
        .max(Comparator.comparing(type -> properties(type).size()));
  }

  /** The properties of an answer that are always there. */
  List<String> required(ClassInfo type) {
    return properties(type).entrySet().stream()
        .filter(Map.Entry::getValue)
        .map(Map.Entry::getKey)
        .toList();
  }

  /** Each property, and whether it is always there. */
  private Map<String, Boolean> properties(ClassInfo type) {
    Map<String, Boolean> all = new LinkedHashMap<>();
    for (RecordComponentInfo part : type.recordComponents()) {
      if (has(part, type, JsonIgnore.class) || has(part, type, JsonAnyGetter.class)) {
        continue;
      }
      ClassInfo group = index.getClassByName(part.type().name());
      if (has(part, type, JsonUnwrapped.class) && group != null && group.isRecord()) {
        boolean there = always(part.type(), Optional.empty());
        properties(group).forEach((name, always) -> all.put(name, always && there));
      } else {
        all.put(
            named(annotation(part, type, JsonProperty.class)).orElse(part.name()),
            always(part.type(), inclusion(part, type)));
      }
    }
    getters(type, all);
    return all;
  }

  private static void getters(ClassInfo type, Map<String, Boolean> all) {
    List<String> parts = new ArrayList<>();
    type.recordComponents().forEach(part -> parts.add(part.name()));
    for (MethodInfo method : type.methods()) {
      boolean plain = method.parametersCount() == 0 && !parts.contains(method.name());
      AnnotationInstance named = method.declaredAnnotation(name(JsonProperty.class));
      if (plain && !method.hasAnnotation(name(JsonIgnore.class))) {
        if (named != null) {
          all.put(
              named(Optional.of(named)).orElse(method.name()),
              always(method.returnType(), Optional.empty()));
        } else if (method.name().matches("get[A-Z].*")) {
          String name = method.name().substring(3);
          all.put(
              Character.toLowerCase(name.charAt(0)) + name.substring(1),
              always(method.returnType(), Optional.empty()));
        }
      }
    }
  }

  private static Optional<String> named(Optional<AnnotationInstance> property) {
    return property
        .map(AnnotationInstance::value)
        .map(value -> value.asString())
        .filter(name -> !name.isEmpty());
  }

  private static boolean always(Type type, Optional<String> inclusion) {
    boolean empty =
        inclusion.filter("NON_EMPTY"::equals).isPresent()
            && OFTEN_EMPTY.contains(type.name().toString());
    boolean optional = type.name().toString().equals("java.util.Optional");
    return !empty && !optional && !type.hasAnnotation(name(Nullable.class));
  }

  private static Optional<String> inclusion(RecordComponentInfo part, ClassInfo type) {
    return annotation(part, type, JsonInclude.class)
        .or(() -> Optional.ofNullable(type.declaredAnnotation(name(JsonInclude.class))))
        .map(include -> include.value() == null ? "ALWAYS" : include.value().asEnum());
  }

  private static boolean has(
      RecordComponentInfo part, ClassInfo type, Class<? extends Annotation> wanted) {
    return annotation(part, type, wanted).isPresent();
  }

  private static Optional<AnnotationInstance> annotation(
      RecordComponentInfo part, ClassInfo type, Class<? extends Annotation> wanted) {
    return Optional.ofNullable(type.field(part.name()).annotation(name(wanted)));
  }

  private static DotName name(Class<?> type) {
    return DotName.createSimple(type.getName());
  }
}
