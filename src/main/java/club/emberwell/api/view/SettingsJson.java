package club.emberwell.api.view;

import club.emberwell.laser.Amount;
import club.emberwell.laser.Setting;
import club.emberwell.laser.Settings;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.report.reading.WrittenSettings;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What a machine was set to, each by its code: quantities with their unit, whole numbers, flags and
 * words as they are. Power is {@code powerPercent} (% of the rated power) or {@code power} (W), as
 * it was given.
 */
public record SettingsJson(@JsonValue Map<String, Object> values) {
  /**
   * @param written what was typed, null where it is not at hand
   */
  public static SettingsJson of(Settings settings, WrittenSettings written) {
    WrittenSettings typed = written == null ? WrittenSettings.NONE : written;
    Map<String, Object> values = new LinkedHashMap<>();
    settings
        .values()
        .forEach(
            (setting, value) ->
                values.put(
                    code(setting, value),
                    value instanceof Amount amount
                        ? QuantityJson.of(amount.kind(), amount.number(), typed.quantity(setting))
                        : value));
    return new SettingsJson(values);
  }

  /** Under which name a setting's value is answered. */
  public static String code(Setting setting, Object value) {
    return value instanceof Amount amount ? code(setting, amount.kind()) : setting.code();
  }

  static String code(Setting setting, QuantityKind kind) {
    return setting.value().bases().size() > 1 ? kind.code() : setting.code();
  }
}
