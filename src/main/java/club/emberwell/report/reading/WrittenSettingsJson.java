package club.emberwell.report.reading;

import club.emberwell.laser.Setting;
import club.emberwell.quantity.WrittenQuantity;
import com.fasterxml.jackson.core.JacksonException;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.deser.std.StdDeserializer;
import java.io.IOException;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/** Reads settings by their words; a word that is none of them is treated as the mapper says. */
final class WrittenSettingsJson extends StdDeserializer<WrittenSettings> {
  private static final long serialVersionUID = 1L;

  WrittenSettingsJson() {
    super(WrittenSettings.class);
  }

  @Override
  public WrittenSettings deserialize(JsonParser in, DeserializationContext context)
      throws IOException {
    if (in.currentToken() != JsonToken.START_OBJECT) {
      return (WrittenSettings) context.handleUnexpectedToken(WrittenSettings.class, in);
    }
    Map<Setting, Object> values = new EnumMap<>(Setting.class);
    while (in.nextToken() != JsonToken.END_OBJECT) {
      String name = in.currentName();
      in.nextToken();
      Optional<Setting> setting = Setting.of(name);
      if (setting.isEmpty()) {
        context.handleUnknownProperty(in, this, WrittenSettings.class, name);
      } else if (in.currentToken() != JsonToken.VALUE_NULL) {
        try {
          values.put(setting.get(), context.readValue(in, type(setting.get())));
        } catch (JacksonException e) {
          throw JsonMappingException.wrapWithPath(e, WrittenSettings.class, name);
        }
      }
    }
    return new WrittenSettings(values);
  }

  private static Class<?> type(Setting setting) {
    return switch (setting.value().shape()) {
      case QUANTITY -> WrittenQuantity.class;
      case COUNT -> Integer.class;
      case FLAG -> Boolean.class;
      case CHOICE -> String.class;
    };
  }
}
