package club.emberwell.api.json;

import io.quarkus.smallrye.openapi.OpenApiFilter;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.eclipse.microprofile.openapi.OASFilter;
import org.eclipse.microprofile.openapi.models.media.Schema;
import org.jboss.jandex.ClassInfo;
import org.jboss.jandex.IndexView;

/** Names the values of enums in the API's description by the words that go over the wire. */
@OpenApiFilter(stages = OpenApiFilter.RunStage.BUILD)
public class CodesOpenApi implements OASFilter {
  /** Words by the names of the constants. */
  private final Map<List<String>, List<Object>> words;

  public CodesOpenApi(IndexView index) {
    words =
        index.getKnownClasses().stream()
            .filter(ClassInfo::isEnum)
            .map(type -> type.name().toString())
            .filter(name -> name.startsWith("club.emberwell."))
            .map(CodesOpenApi::constants)
            .collect(
                Collectors.toMap(
                    values -> Stream.of(values).map(Enum::name).sorted().toList(),
                    CodesOpenApi::codes,
                    (one, other) -> one));
  }

  @Override
  public Schema filterSchema(Schema schema) {
    if (schema.getEnumeration() != null) {
      List<String> names = schema.getEnumeration().stream().map(String::valueOf).sorted().toList();
      schema.setEnumeration(words.getOrDefault(names, schema.getEnumeration()));
    }
    return schema;
  }

  /** The words of an enum's values, by the name of its class. */
  public static List<Object> codes(String type) {
    return codes(constants(type));
  }

  private static List<Object> codes(Enum<?>[] values) {
    return Stream.of(values).<Object>map(Codes::of).toList();
  }

  private static Enum<?>[] constants(String name) {
    try {
      return (Enum<?>[])
          Class.forName(name, true, CodesOpenApi.class.getClassLoader()).getEnumConstants();
    } catch (ClassNotFoundException e) {
      throw new IllegalStateException(e);
    }
  }
}
