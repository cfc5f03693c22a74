package club.emberwell.bench;

import com.fasterxml.jackson.core.type.TypeReference;
import jakarta.persistence.AttributeConverter;
import jakarta.persistence.Converter;

/** A machine as written, as JSON in the database. */
@Converter
class WrittenMachineConverter implements AttributeConverter<WrittenMachine, String> {
  @Override
  public String convertToDatabaseColumn(WrittenMachine written) {
    return written == null ? null : StoredJson.write(written);
  }

  @Override
  public WrittenMachine convertToEntityAttribute(String json) {
    return json == null ? null : StoredJson.read(json, new TypeReference<WrittenMachine>() {});
  }
}
