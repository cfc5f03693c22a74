package club.emberwell.api.view;

import club.emberwell.laser.Setting;
import club.emberwell.laser.SettingValue.Choice;
import club.emberwell.laser.dose.DoseFormula;
import io.quarkus.smallrye.openapi.OpenApiFilter;
import java.util.List;
import java.util.stream.Stream;
import org.eclipse.microprofile.openapi.OASFactory;
import org.eclipse.microprofile.openapi.OASFilter;
import org.eclipse.microprofile.openapi.models.OpenAPI;
import org.eclipse.microprofile.openapi.models.media.Schema;

/** Describes settings and what follows from them, each value from where it is defined. */
@OpenApiFilter(stages = OpenApiFilter.RunStage.BUILD)
public class SettingsOpenApi implements OASFilter {
  private static final String ANSWERED = "QuantityJson";
  private static final String SENT = "WrittenQuantity";

  @Override
  public void filterOpenAPI(OpenAPI api) {
    if (api.getComponents() == null || api.getComponents().getSchemas() == null) {
      return;
    }
    api.getComponents().addSchema("WrittenSettings", settings(SENT));
    api.getComponents().addSchema("SettingsJson", settings(ANSWERED));
    api.getComponents().addSchema("DerivedJson", derived());
  }

  private static Schema settings(String quantity) {
    Schema all = object();
    for (Setting setting : Setting.values()) {
      all.addProperty(
          setting.code(),
          switch (setting.value().shape()) {
            case QUANTITY -> reference(quantity);
            case COUNT -> schema(Schema.SchemaType.INTEGER).format("int32");
            case FLAG -> schema(Schema.SchemaType.BOOLEAN);
            case CHOICE -> schema(Schema.SchemaType.STRING).enumeration(codes(setting));
          });
    }
    return all;
  }

  private static List<Object> codes(Setting setting) {
    return setting.value().choices().stream().<Object>map(Choice::code).toList();
  }

  private static Schema derived() {
    Schema all = object();
    all.addProperty("basis", schema(Schema.SchemaType.STRING));
    Stream.of(DoseFormula.values())
        .forEach(
            formula ->
                all.addProperty(
                    formula.field(),
                    formula.unit().isEmpty()
                        ? schema(Schema.SchemaType.NUMBER)
                        : reference(ANSWERED)));
    return all;
  }

  private static Schema object() {
    return schema(Schema.SchemaType.OBJECT);
  }

  private static Schema schema(Schema.SchemaType type) {
    return OASFactory.createSchema().addType(type);
  }

  private static Schema reference(String name) {
    return OASFactory.createSchema().ref("#/components/schemas/" + name);
  }
}
