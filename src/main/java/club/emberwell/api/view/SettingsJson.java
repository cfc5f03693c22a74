package club.emberwell.api.view;

import club.emberwell.laser.Amount;
import club.emberwell.laser.Settings;
import club.emberwell.report.reading.WrittenSettings;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What a machine was set to, each by its code: quantities with their unit, power in % of the rated
 * power or in W as it was given; whole numbers, flags and words as they are.
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
                    setting.code(),
                    value instanceof Amount amount
                        ? QuantityJson.of(amount.kind(), amount.number(), typed.quantity(setting))
                        : value));
    return new SettingsJson(values);
  }
}
