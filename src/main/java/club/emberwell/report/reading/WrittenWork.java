package club.emberwell.report.reading;

import club.emberwell.quantity.WrittenQuantity;
import com.fasterxml.jackson.annotation.JsonAnyGetter;
import com.fasterxml.jackson.annotation.JsonIgnore;
import com.fasterxml.jackson.databind.annotation.JsonDeserialize;
import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What was done to what, as typed. A value; what is not given is not in it.
 *
 * @param process null where it is not given
 * @param values by their shape a {@link WrittenQuantity} or a text
 */
@JsonDeserialize(using = WrittenWorkJson.class)
public record WrittenWork(String process, @JsonIgnore Map<WorkProperty, Object> values) {
  public WrittenWork {
    Map<WorkProperty, Object> copy = new EnumMap<>(WorkProperty.class);
    copy.putAll(values);
    values = Collections.unmodifiableMap(copy);
  }

  /** Nothing is said of it but what was done. */
  public static WrittenWork of(String process) {
    return new WrittenWork(process, Map.of());
  }

  /** The same but for one value; null = not given. */
  public WrittenWork with(WorkProperty property, Object value) {
    Map<WorkProperty, Object> copy = new EnumMap<>(WorkProperty.class);
    copy.putAll(values);
    if (value == null) {
      copy.remove(property);
    } else {
      copy.put(property, value);
    }
    return new WrittenWork(process, copy);
  }

  /** Null where it is not given. */
  public Object of(WorkProperty property) {
    return values.get(property);
  }

  /** Null where it is not given. */
  public WrittenQuantity quantity(WorkProperty property) {
    return (WrittenQuantity) values.get(property);
  }

  /** Null where it is not given. */
  public String text(WorkProperty property) {
    return (String) values.get(property);
  }

  /** The values under their words in the API. */
  @JsonAnyGetter
  public Map<String, Object> byCode() {
    Map<String, Object> byCode = new LinkedHashMap<>();
    values.forEach((property, value) -> byCode.put(property.code(), value));
    return byCode;
  }
}
