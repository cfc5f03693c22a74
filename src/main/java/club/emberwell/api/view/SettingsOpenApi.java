package club.emberwell.api.view;

import club.emberwell.laser.Setting;
import club.emberwell.laser.SettingValue.Choice;
import club.emberwell.laser.dose.DoseFormula;
import club.emberwell.remark.Coded;
import club.emberwell.report.reading.WorkProperty;
import club.emberwell.search.query.Facet;
import io.quarkus.smallrye.openapi.OpenApiFilter;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.eclipse.microprofile.openapi.OASFactory;
import org.eclipse.microprofile.openapi.OASFilter;
import org.eclipse.microprofile.openapi.models.OpenAPI;
import org.eclipse.microprofile.openapi.models.media.Schema;

/** Describes settings, the work and what follows from them, each value from where it is defined. */
@OpenApiFilter(stages = OpenApiFilter.RunStage.BUILD)
public class SettingsOpenApi implements OASFilter {
  private static final String ANSWERED = "QuantityJson";
  private static final String SENT = "WrittenQuantity";
  private static final String WORD = "WordJson";

  @Override
  public void filterOpenAPI(OpenAPI api) {
    if (api.getComponents() == null || api.getComponents().getSchemas() == null) {
      return;
    }
    api.getComponents().addSchema("WrittenSettings", settings(SENT));
    api.getComponents().addSchema("SettingsJson", settings(ANSWERED));
    api.getComponents().addSchema("DerivedJson", derived());
    api.getComponents().addSchema(WORD, word());
    Map<String, Schema> schemas = api.getComponents().getSchemas();
    work(schemas.get("ReportRequest"), SettingsOpenApi::text, SENT);
    work(schemas.get("GridRequest"), SettingsOpenApi::text, SENT);
    work(schemas.get("WrittenGrid"), SettingsOpenApi::text, SENT);
    work(schemas.get("RecipeRequest"), SettingsOpenApi::text, SENT);
    work(schemas.get("WrittenRecipe"), SettingsOpenApi::text, SENT);
    work(schemas.get("RecipeJson"), () -> reference(WORD), ANSWERED);
    work(schemas.get("JobCard"), () -> reference(WORD), ANSWERED);
    work(schemas.get("ReportHit"), () -> reference(WORD), ANSWERED);
    work(schemas.get("ReportJson"), () -> reference(WORD), ANSWERED);
    ranged(schemas.get("RangeOf"));
  }

  private static Schema settings(String quantity) {
    Schema all = object();
    for (Setting setting : Setting.values()) {
      if (quantity.equals(ANSWERED) && setting.value().bases().size() > 1) {
        setting
            .value()
            .bases()
            .forEach(
                basis ->
                    all.addProperty(SettingsJson.code(setting, basis.kind()), reference(quantity)));
        continue;
      }
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

  private static Schema word() {
    Schema word = object();
    Stream.of(WordJson.class.getRecordComponents())
        .forEach(part -> word.addProperty(part.getName(), text()));
    return word;
  }

  /** Null where a document has no such schema. */
  private static void work(Schema report, Supplier<Schema> word, String quantity) {
    if (report == null) {
      return;
    }
    for (WorkProperty property : WorkProperty.values()) {
      report.addProperty(
          property.code(),
          switch (property.value().shape()) {
            case WORD -> word.get();
            case QUANTITY -> reference(quantity);
            case TEXT, LINES -> text();
          });
    }
  }

  /** What a range is about: the values of the work as the search's filters have them. */
  private static void ranged(Schema about) {
    if (about != null) {
      Stream.of(Facet.values())
          .filter(facet -> Coded.of(WorkProperty.class, facet.code()).isPresent())
          .forEach(facet -> about.addProperty(facet.code(), text()));
    }
  }

  private static Schema text() {
    return schema(Schema.SchemaType.STRING);
  }

  private static Schema derived() {
    Schema all = object();
    all.addProperty("basis", text());
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
