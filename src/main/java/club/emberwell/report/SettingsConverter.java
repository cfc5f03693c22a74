package club.emberwell.report;

import club.emberwell.bench.StoredJson;
import club.emberwell.laser.Settings;
import com.fasterxml.jackson.core.type.TypeReference;
import jakarta.persistence.AttributeConverter;
import jakarta.persistence.Converter;
import java.util.Map;

/** Settings as JSON in the database: canonical numbers, flags and words by code. */
@Converter
class SettingsConverter implements AttributeConverter<Settings, String> {
  @Override
  public String convertToDatabaseColumn(Settings settings) {
    return settings == null ? null : StoredJson.write(settings.byCode());
  }

  @Override
  public Settings convertToEntityAttribute(String json) {
    return json == null
        ? null
        : Settings.ofCodes(StoredJson.read(json, new TypeReference<Map<String, Object>>() {}));
  }
}
