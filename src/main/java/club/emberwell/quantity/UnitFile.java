package club.emberwell.quantity;

import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.constructor.SafeConstructor;

/**
 * {@code shared/vocabulary/units.yaml}: every unit and every spelling of it.
 *
 * @param per what stands between a unit and what it is counted by, by language
 * @param units by the code of what they measure
 * @param atoms what units are put together from
 */
record UnitFile(Map<String, List<String>> per, Map<String, List<Unit>> units, List<Unit> atoms) {
  private static final String NAME = "shared/vocabulary/units.yaml";

  /**
   * A unit or a part of one.
   *
   * @param label what people see; null for a part
   * @param spellings by language, null where there are none beside code and label
   */
  record Unit(String ucum, String label, Map<String, List<String>> spellings) {
    Stream<String> spelled() {
      return spellings == null
          ? Stream.empty()
          : spellings.values().stream().flatMap(List::stream).distinct();
    }
  }

  static UnitFile read() {
    try (InputStream in = UnitFile.class.getClassLoader().getResourceAsStream(NAME)) {
      if (in == null) {
        throw new IllegalStateException("not in the program: " + NAME);
      }
      Object tree = new Yaml(new SafeConstructor(new LoaderOptions())).load(in);
      return JsonMapper.builder()
          .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
          .build()
          .convertValue(tree, UnitFile.class);
    } catch (IOException e) {
      throw new UncheckedIOException("cannot read " + NAME, e);
    }
  }
}
