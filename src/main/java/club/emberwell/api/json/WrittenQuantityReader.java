package club.emberwell.api.json;

import club.emberwell.quantity.WrittenQuantity;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.deser.std.StdDeserializer;
import java.io.IOException;
import java.math.BigDecimal;

/**
 * Reads a quantity as the API takes it: a text with its unit, or {@code {"value", "unit"}} with a
 * UCUM code. Whatever else stands there is refused with its pointer.
 */
final class WrittenQuantityReader extends StdDeserializer<WrittenQuantity> {
  private static final long serialVersionUID = 1L;

  WrittenQuantityReader() {
    super(WrittenQuantity.class);
  }

  @Override
  public WrittenQuantity deserialize(JsonParser in, DeserializationContext context)
      throws IOException {
    if (in.currentToken() == JsonToken.VALUE_STRING) {
      return WrittenQuantity.of(in.getText());
    }
    if (in.currentToken() != JsonToken.START_OBJECT) {
      return context.reportInputMismatch(this, "a text or {value, unit}");
    }
    BigDecimal value = null;
    String unit = null;
    while (in.nextToken() != JsonToken.END_OBJECT) {
      String field = in.currentName();
      JsonToken token = in.nextToken();
      if (field.equals("value") && token.isNumeric()) {
        value = in.getDecimalValue();
      } else if (field.equals("unit") && token == JsonToken.VALUE_STRING) {
        unit = in.getText();
      } else {
        return context.reportInputMismatch(this, "a text or {value, unit}");
      }
    }
    if (value == null || unit == null) {
      return context.reportInputMismatch(this, "a text or {value, unit}");
    }
    return new WrittenQuantity(null, value, unit);
  }
}
