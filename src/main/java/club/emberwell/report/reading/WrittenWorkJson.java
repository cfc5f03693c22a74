package club.emberwell.report.reading;

import club.emberwell.quantity.WrittenQuantity;
import club.emberwell.remark.Coded;
import com.fasterxml.jackson.core.JacksonException;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.JsonDeserializer;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.deser.std.StdDeserializer;
import com.fasterxml.jackson.databind.util.NameTransformer;
import java.io.IOException;
import java.util.Collection;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** Reads what was done to what by its words, by itself or among the fields of a report. */
final class WrittenWorkJson extends StdDeserializer<WrittenWork> {
  private static final long serialVersionUID = 1L;
  private static final String PROCESS = "process";

  private final boolean amongOthers;

  WrittenWorkJson() {
    this(false);
  }

  private WrittenWorkJson(boolean amongOthers) {
    super(WrittenWork.class);
    this.amongOthers = amongOthers;
  }

  @Override
  public JsonDeserializer<WrittenWork> unwrappingDeserializer(NameTransformer names) {
    return new WrittenWorkJson(true);
  }

  @Override
  public Collection<Object> getKnownPropertyNames() {
    return Stream.concat(
            Stream.of(PROCESS), Stream.of(WorkProperty.values()).map(WorkProperty::code))
        .<Object>map(name -> name)
        .toList();
  }

  @Override
  public WrittenWork deserialize(JsonParser in, DeserializationContext context) throws IOException {
    if (in.currentToken() != JsonToken.START_OBJECT) {
      return (WrittenWork) context.handleUnexpectedToken(WrittenWork.class, in);
    }
    String process = null;
    Map<WorkProperty, Object> values = new EnumMap<>(WorkProperty.class);
    // among others the object is still open at the end
    while (in.nextToken() == JsonToken.FIELD_NAME) {
      String name = in.currentName();
      in.nextToken();
      Optional<WorkProperty> property = Coded.of(WorkProperty.class, name);
      if (name.equals(PROCESS)) {
        process = value(in, context, name, String.class);
      } else if (property.isPresent()) {
        Object value = value(in, context, name, type(property.get()));
        if (value != null) {
          values.put(property.get(), value);
        }
      } else if (amongOthers) {
        in.skipChildren();
      } else {
        context.handleUnknownProperty(in, this, WrittenWork.class, name);
      }
    }
    return new WrittenWork(process, values);
  }

  private static <T> T value(
      JsonParser in, DeserializationContext context, String name, Class<T> type)
      throws IOException {
    if (in.currentToken() == JsonToken.VALUE_NULL) {
      return null;
    }
    try {
      return context.readValue(in, type);
    } catch (JacksonException e) {
      throw JsonMappingException.wrapWithPath(e, WrittenWork.class, name);
    }
  }

  private static Class<?> type(WorkProperty property) {
    return switch (property.value().shape()) {
      case QUANTITY -> WrittenQuantity.class;
      case WORD, TEXT, LINES -> String.class;
    };
  }
}
