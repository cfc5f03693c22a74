package club.emberwell.api.json;

import club.emberwell.remark.Coded;
import com.fasterxml.jackson.databind.cfg.MapperConfig;
import com.fasterxml.jackson.databind.introspect.AnnotatedClass;
import com.fasterxml.jackson.databind.introspect.NopAnnotationIntrospector;
import java.util.Locale;

/** The word by which each value of an enum goes by in JSON, as value and as key. */
final class Codes extends NopAnnotationIntrospector {
  private static final long serialVersionUID = 1L;
  private static final String OURS = "club.emberwell.";

  @Override
  public String[] findEnumValues(
      MapperConfig<?> config, AnnotatedClass type, Enum<?>[] values, String[] names) {
    if (type.getName().startsWith(OURS)) {
      for (int i = 0; i < values.length; i++) {
        names[i] = of(values[i]);
      }
    }
    return names;
  }

  /** The code; where it has none, its name in lower case with dashes. */
  static String of(Enum<?> value) {
    return value instanceof Coded coded
        ? coded.code()
        : value.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
