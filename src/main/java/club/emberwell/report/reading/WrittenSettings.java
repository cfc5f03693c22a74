package club.emberwell.report.reading;

import club.emberwell.laser.Amount;
import club.emberwell.laser.Setting;
import club.emberwell.laser.Settings;
import club.emberwell.quantity.WrittenQuantity;
import com.fasterxml.jackson.annotation.JsonValue;
import com.fasterxml.jackson.databind.annotation.JsonDeserialize;
import java.math.BigDecimal;
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

  /** The same with what is not given taken from others, in canonical units. */
  public WrittenSettings or(Settings others) {
    Map<Setting, Object> all = new EnumMap<>(Setting.class);
    others.values().forEach((setting, value) -> all.put(setting, written(value)));
    all.putAll(values);
    return new WrittenSettings(all);
  }

  /** A value of {@link Settings} as it may be written, in its canonical unit. */
  public static Object written(Object value) {
    if (!(value instanceof Amount amount)) {
      return value;
    }
    BigDecimal number = BigDecimal.valueOf(amount.number()).stripTrailingZeros();
    return new WrittenQuantity(
        null, number.scale() < 0 ? number.setScale(0) : number, amount.kind().canonicalUnit());
  }

  /** The values under their words in the API. */
  @JsonValue
  public Map<String, Object> byCode() {
    Map<String, Object> byCode = new LinkedHashMap<>();
    values.forEach((setting, value) -> byCode.put(setting.code(), value));
    return byCode;
  }
}
