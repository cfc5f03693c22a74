package club.emberwell.api.contract;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.eclipse.microprofile.openapi.OASFactory;
import org.eclipse.microprofile.openapi.models.Components;
import org.eclipse.microprofile.openapi.models.OpenAPI;
import org.eclipse.microprofile.openapi.models.Operation;
import org.eclipse.microprofile.openapi.models.PathItem;
import org.eclipse.microprofile.openapi.models.media.Schema;
import org.eclipse.microprofile.openapi.models.parameters.Parameter;

/** Makes the generated schemas say what the program does, and drops what nothing refers to. */
final class SchemaCare {
  private static final Map<String, String> FORMATS = Map.of("UUID", "uuid", "Instant", "date-time");

  private final OpenAPI api;
  private final Components components;
  private final Schemas schemas;
  private final Shapes shapes;

  SchemaCare(OpenAPI api, Schemas schemas, Shapes shapes) {
    this.api = api;
    this.components = api.getComponents();
    this.schemas = schemas;
    this.shapes = shapes;
  }

  /** Before the operations are described. */
  void mend() {
    everywhere().forEach(root -> Schemas.walk(root, SchemaCare::inline));
    FORMATS.keySet().forEach(components::removeSchema);
    components.addSchema(Schemas.SENT_QUANTITY, sentQuantity());
    Set<String> sent = names(operations().stream().flatMap(o -> Schemas.sent(o).stream()).toList());
    Set<String> answered =
        names(operations().stream().flatMap(o -> Schemas.answered(o).stream()).toList());
    schemas
        .all()
        .forEach(
            (name, schema) -> {
              if (sent.contains(name) && schema.getProperties() != null) {
                schema.setAdditionalPropertiesSchema(Models.nothing());
              } else if (isList(name)) {
                schema.setRequired(List.of("items"));
              } else if (answered.contains(name) && schema.getProperties() != null) {
                shapes
                    .type(name, schema)
                    .ifPresent(type -> schema.setRequired(shapes.required(type)));
              }
            });
  }

  /** A repeat takes from the report what it leaves out. */
  void splitRepeats() {
    Schema whole = schemas.all().get("ReportRequest");
    Schema part =
        Models.object()
            .description("What is left out is taken from the report that is repeated.")
            .properties(whole.getProperties());
    part.setAdditionalPropertiesSchema(Models.nothing());
    components.addSchema("RepeatRequest", part);
    operations().stream()
        .filter(operation -> "createRepeat".equals(operation.getOperationId()))
        .flatMap(operation -> Schemas.sent(operation).stream())
        .forEach(sent -> sent.setRef(Models.SCHEMAS + "RepeatRequest"));
  }

  /** After it: every name that is left is that of something an operation sends or answers. */
  void tidy() {
    Map<String, String> renamed = new TreeMap<>();
    schemas.all().keySet().forEach(name -> renamed.put(name, named(name)));
    Set<String> taken = new HashSet<>();
    renamed.replaceAll((was, name) -> taken.add(name) ? name : was);
    everywhere()
        .forEach(
            root ->
                Schemas.walk(
                    root,
                    schema -> {
                      if (schema.getRef() != null) {
                        String name = Schemas.name(schema);
                        schema.setRef(Models.SCHEMAS + renamed.getOrDefault(name, name));
                        schema.setType(null);
                      }
                    }));
    Map<String, Schema> all = new TreeMap<>();
    schemas.all().forEach((name, schema) -> all.put(renamed.getOrDefault(name, name), schema));
    components.setSchemas(all);
    Set<String> used = names(roots());
    SchemaNames.assertUsed(used);
    components.setSchemas(null);
    all.forEach(
        (name, schema) -> {
          if (used.contains(name)) {
            components.addSchema(name, schema);
          }
        });
  }

  private String named(String name) {
    Schema schema = schemas.all().get(name);
    if (isList(name)) {
      Schema items = schema.getProperties().get("items").getItems();
      return items.getRef() == null ? "IdList" : named(Schemas.name(items)) + "List";
    }
    return shapes
        .type(name, schema)
        .flatMap(SchemaNames::of)
        // the suffix tells the program's records from its values; clients have no use for it
        .orElse(name.replaceAll("(?<=.)(Json|View)$", ""));
  }

  private static boolean isList(String name) {
    return name.startsWith("ListJson");
  }

  private static void inline(Schema schema) {
    if (schema.getRef() != null && FORMATS.containsKey(Schemas.name(schema))) {
      String format = FORMATS.get(Schemas.name(schema));
      schema.setRef(null);
      schema.addType(Schema.SchemaType.STRING);
      schema.setFormat(format);
    }
  }

  private static Schema sentQuantity() {
    Schema text =
        Models.text()
            .description(
                "As people write it, with its unit: `12 in/s`, `0,08 mm`, `45 %`. What could mean two"
                    + " things is refused with its readings.");
    Schema pair =
        Models.object()
            .addProperty("value", Models.number())
            .addProperty("unit", Models.text().description("UCUM code, e.g. `[in_i]/s`."))
            .required(List.of("value", "unit"));
    pair.setAdditionalPropertiesSchema(Models.nothing());
    return OASFactory.createSchema()
        .description("A quantity: a text with its unit, or a value with its UCUM unit.")
        .oneOf(List.of(text, pair));
  }

  private Collection<Operation> operations() {
    return api.getPaths().getPathItems().values().stream()
        .flatMap(item -> item.getOperations().values().stream())
        .toList();
  }

  private Set<String> names(Collection<Schema> from) {
    return schemas.reachable(from);
  }

  /** What operations and shared answers refer to. */
  private List<Schema> roots() {
    List<Schema> roots = new ArrayList<>();
    for (PathItem item : api.getPaths().getPathItems().values()) {
      for (Operation operation : item.getOperations().values()) {
        roots.addAll(Schemas.sent(operation));
        roots.addAll(Schemas.answered(operation));
        if (operation.getParameters() != null) {
          operation.getParameters().stream().map(Parameter::getSchema).forEach(roots::add);
        }
      }
    }
    if (components.getResponses() != null) {
      components
          .getResponses()
          .values()
          .forEach(answer -> roots.addAll(Schemas.of(answer.getContent())));
    }
    return roots;
  }

  private List<Schema> everywhere() {
    List<Schema> all = new ArrayList<>(roots());
    all.addAll(schemas.all().values());
    return all;
  }
}
