package club.emberwell.talk;

import club.emberwell.bench.StoredJson;
import com.fasterxml.jackson.core.type.TypeReference;
import jakarta.persistence.AttributeConverter;
import jakarta.persistence.Converter;

/** An entry as written, as JSON in the database. */
@Converter
class WrittenTalkConverter implements AttributeConverter<WrittenTalk, String> {
  @Override
  public String convertToDatabaseColumn(WrittenTalk written) {
    return written == null ? null : StoredJson.write(written);
  }

  @Override
  public WrittenTalk convertToEntityAttribute(String json) {
    return json == null ? null : StoredJson.read(json, new TypeReference<WrittenTalk>() {});
  }
}
