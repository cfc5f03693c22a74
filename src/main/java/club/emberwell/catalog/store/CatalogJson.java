package club.emberwell.catalog.store;

import club.emberwell.catalog.CautionRule;
import club.emberwell.catalog.ContentHash;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.util.LinkedHashMap;
import java.util.Map;

/** The shape in which terms and rules are kept as JSON: that of the data files. */
final class CatalogJson {
  private static final JsonMapper MAPPER =
      JsonMapper.builder()
          .defaultPropertyInclusion(
              JsonInclude.Value.construct(JsonInclude.Include.NON_NULL, JsonInclude.Include.ALWAYS))
          .build();
  private static final TypeReference<LinkedHashMap<String, Object>> MAP = new TypeReference<>() {};

  private CatalogJson() {}

  static Map<String, Object> map(Object value) {
    return MAPPER.convertValue(value, MAP);
  }

  static CautionRule rule(Map<String, Object> map) {
    return MAPPER.convertValue(map, CautionRule.class);
  }

  /** Equal content, equal hash. */
  static String hash(Object value) {
    return ContentHash.sha256(String.valueOf(map(value)));
  }
}
