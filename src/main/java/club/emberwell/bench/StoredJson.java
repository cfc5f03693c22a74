package club.emberwell.bench;

import club.emberwell.laser.Settings;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.RemarkId;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonValue;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.datatype.jsr310.JavaTimeModule;
import java.util.Map;

/**
 * The form in which entries as written are kept. Its own mapper: what is stored for ever must not
 * change with the settings of the API. Fields of later versions are skipped when read.
 */
public final class StoredJson {
  private static final ObjectMapper MAPPER =
      JsonMapper.builder()
          .addModule(new JavaTimeModule())
          .addMixIn(Settings.class, AsSettings.class)
          .defaultPropertyInclusion(
              JsonInclude.Value.construct(
                  JsonInclude.Include.NON_NULL, JsonInclude.Include.NON_NULL))
          .disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
          .disable(SerializationFeature.WRITE_DATES_AS_TIMESTAMPS)
          .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
          .build();

  private StoredJson() {}

  /** Physics knows nothing of JSON. */
  private interface AsSettings {
    @JsonValue
    Map<String, Object> byCode();
  }

  public static String write(Object value) {
    try {
      return MAPPER.writeValueAsString(value);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("cannot be stored: " + value.getClass(), e);
    }
  }

  /** The same as a tree, for comparing. */
  public static JsonNode tree(Object value) {
    return MAPPER.valueToTree(value);
  }

  /** The same as a plain map. */
  public static Map<String, Object> map(Object value) {
    return MAPPER.convertValue(value, new TypeReference<Map<String, Object>>() {});
  }

  /**
   * What somebody brought along in the form in which it is kept.
   *
   * @throws EntryRefused where it has another shape
   */
  public static <T> T brought(String json, TypeReference<T> type) {
    try {
      return MAPPER.readValue(json, type);
    } catch (JsonProcessingException e) {
      throw new EntryRefused(RemarkId.COPY_SHAPE, "", "Its words have another shape.");
    }
  }

  public static <T> T read(String json, TypeReference<T> type) {
    try {
      return MAPPER.readValue(json, type);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("stored entry cannot be read as " + type.getType(), e);
    }
  }
}
