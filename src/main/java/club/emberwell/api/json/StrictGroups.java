package club.emberwell.api.json;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.databind.BeanDescription;
import com.fasterxml.jackson.databind.DeserializationConfig;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.JsonDeserializer;
import com.fasterxml.jackson.databind.deser.BeanDeserializerModifier;
import com.fasterxml.jackson.databind.deser.std.DelegatingDeserializer;
import com.fasterxml.jackson.databind.exc.UnrecognizedPropertyException;
import com.fasterxml.jackson.databind.introspect.AnnotatedMember;
import com.fasterxml.jackson.databind.introspect.BeanPropertyDefinition;
import com.fasterxml.jackson.databind.util.ClassUtil;
import com.fasterxml.jackson.databind.util.TokenBuffer;
import java.io.IOException;
import java.util.Collection;
import java.util.HashSet;
import java.util.Set;

/**
 * Refuses unknown fields of an object whose fields are read in groups ({@code @JsonUnwrapped}):
 * Jackson by itself lets those pass.
 */
final class StrictGroups extends DelegatingDeserializer {
  private static final long serialVersionUID = 1L;

  private final transient Set<Object> known;

  private StrictGroups(JsonDeserializer<?> groups, Set<Object> known) {
    super(groups);
    this.known = known;
  }

  @Override
  protected JsonDeserializer<?> newDelegatingInstance(JsonDeserializer<?> groups) {
    return new StrictGroups(groups, known);
  }

  @Override
  public Object deserialize(JsonParser in, DeserializationContext context) throws IOException {
    try (TokenBuffer all = context.bufferAsCopyOfValue(in);
        JsonParser names = all.asParserOnFirstToken();
        JsonParser again = all.asParserOnFirstToken()) {
      if (names.currentToken() == JsonToken.START_OBJECT) {
        while (names.nextToken() == JsonToken.FIELD_NAME) {
          if (!known.contains(names.currentName())) {
            throw UnrecognizedPropertyException.from(in, handledType(), names.currentName(), known);
          }
          names.nextToken();
          names.skipChildren();
        }
      }
      return super.deserialize(again, context);
    }
  }

  /** Finds the objects that are read in groups. */
  static final class Modifier extends BeanDeserializerModifier {
    private static final long serialVersionUID = 1L;

    @Override
    public JsonDeserializer<?> modifyDeserializer(
        DeserializationConfig config, BeanDescription bean, JsonDeserializer<?> deserializer) {
      Set<Object> known = new HashSet<>();
      return collect(config, bean, known) ? new StrictGroups(deserializer, known) : deserializer;
    }

    /** Adds the names of all fields; answers whether there are groups. */
    private static boolean collect(
        DeserializationConfig config, BeanDescription bean, Set<Object> known) {
      boolean groups = false;
      for (BeanPropertyDefinition property : bean.findProperties()) {
        AnnotatedMember member = property.getPrimaryMember();
        if (member != null
            && config.getAnnotationIntrospector().findUnwrappingNameTransformer(member) != null) {
          BeanDescription group = config.introspect(property.getPrimaryType());
          collect(config, group, known);
          known.addAll(readByItself(config, group));
          groups = true;
        } else {
          known.add(property.getName());
        }
      }
      return groups;
    }

    /** The names a group knows that is read by a deserializer of its own. */
    private static Collection<Object> readByItself(
        DeserializationConfig config, BeanDescription group) {
      Object own = config.getAnnotationIntrospector().findDeserializer(group.getClassInfo());
      return own instanceof Class<?> type
          ? ((JsonDeserializer<?>) ClassUtil.createInstance(type, true)).getKnownPropertyNames()
          : Set.of();
    }
  }
}
