package club.emberwell.api.contract;

import java.math.BigDecimal;
import java.util.List;
import org.eclipse.microprofile.openapi.OASFactory;
import org.eclipse.microprofile.openapi.models.headers.Header;
import org.eclipse.microprofile.openapi.models.media.Schema;
import org.eclipse.microprofile.openapi.models.media.Schema.SchemaType;

/** The schemas everything else is put together from. */
final class Models {
  static final String SCHEMAS = "#/components/schemas/";

  private Models() {}

  static Schema text() {
    return typed(SchemaType.STRING);
  }

  static Schema words(List<?> codes) {
    return text().enumeration(List.copyOf(codes));
  }

  static Schema integer(int least) {
    return typed(SchemaType.INTEGER).minimum(BigDecimal.valueOf(least));
  }

  static Schema number() {
    return typed(SchemaType.NUMBER);
  }

  static Schema object() {
    return typed(SchemaType.OBJECT);
  }

  static Schema list(Schema items) {
    return typed(SchemaType.ARRAY).items(items);
  }

  static Schema reference(String name) {
    return OASFactory.createSchema().ref(SCHEMAS + name);
  }

  /** Fits nothing. */
  static Schema nothing() {
    return OASFactory.createSchema().booleanSchema(false);
  }

  /** A header that is always there. */
  static Header header(Schema schema, String description) {
    return OASFactory.createHeader().required(true).schema(schema).description(description);
  }

  private static Schema typed(SchemaType type) {
    return OASFactory.createSchema().addType(type);
  }
}
