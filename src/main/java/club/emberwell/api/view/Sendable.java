package club.emberwell.api.view;

import club.emberwell.bench.StoredJson;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.ser.std.StdSerializer;
import java.io.IOException;

/** Writes an entry as it may be sent: a quantity as the text it was typed as, or value and unit. */
public final class Sendable extends StdSerializer<Object> {
  private static final long serialVersionUID = 1L;
  private static final String TEXT = "text";

  Sendable() {
    super(Object.class);
  }

  @Override
  public void serialize(Object written, JsonGenerator out, SerializerProvider known)
      throws IOException {
    out.writeTree(sendable(StoredJson.tree(written)));
  }

  private static JsonNode sendable(JsonNode node) {
    if (node instanceof ObjectNode object) {
      if (object.size() == 1 && object.has(TEXT)) {
        return object.get(TEXT);
      }
      object.properties().forEach(field -> field.setValue(sendable(field.getValue())));
    } else if (node instanceof ArrayNode array) {
      for (int i = 0; i < array.size(); i++) {
        array.set(i, sendable(array.get(i)));
      }
    }
    return node;
  }
}
