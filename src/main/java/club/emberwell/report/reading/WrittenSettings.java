package club.emberwell.report.reading;

import club.emberwell.laser.Setting;
import club.emberwell.quantity.WrittenQuantity;
import com.fasterxml.jackson.annotation.JsonValue;
import com.fasterxml.jackson.databind.annotation.JsonDeserialize;
import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Settings as typed. A value; what is not given is not in it.
 *
 * @param values by their shape a {@link WrittenQuantity}, an Integer, a Boolean or a text
 */
@JsonDeserialize(using = WrittenSettingsJson.class)
public record WrittenSettings(Map<Setting, Object> values) {
  public static final WrittenSettings NONE = new WrittenSettings(Map.of());

  public WrittenSettings {
    Map<Setting, Object> copy = new EnumMap<>(Setting.class);
    copy.putAll(values);
    values = Collections.unmodifiableMap(copy);
  }

  /** Null where it is not given. */
  public Object of(Setting setting) {
    return values.get(setting);
  }

  /** Null where it is not given. */
  public WrittenQuantity quantity(Setting setting) {
    return (WrittenQuantity) values.get(setting);
  }

  /** The same but for one value; null = not given. */
  public WrittenSettings with(Setting setting, Object value) {
    Map<Setting, Object> copy = new EnumMap<>(Setting.class);
    copy.putAll(values);
    if (value == null) {
      copy.remove(setting);
    } else {
      copy.put(setting, value);
    }
    return new WrittenSettings(copy);
  }

  /** The values under their words in the API. */
  @JsonValue
  public Map<String, Object> byCode() {
    Map<String, Object> byCode = new LinkedHashMap<>();
    values.forEach((setting, value) -> byCode.put(setting.code(), value));
    return byCode;
  }
}
