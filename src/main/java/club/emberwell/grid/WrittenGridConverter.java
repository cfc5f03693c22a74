package club.emberwell.grid;

import club.emberwell.bench.StoredJson;
import club.emberwell.grid.reading.WrittenGrid;
import com.fasterxml.jackson.core.type.TypeReference;
import jakarta.persistence.AttributeConverter;
import jakarta.persistence.Converter;

/** A grid as written, as JSON in the database. */
@Converter
class WrittenGridConverter implements AttributeConverter<WrittenGrid, String> {
  static final TypeReference<WrittenGrid> SHAPE = new TypeReference<>() {};

  @Override
  public String convertToDatabaseColumn(WrittenGrid written) {
    return written == null ? null : StoredJson.write(written);
  }

  @Override
  public WrittenGrid convertToEntityAttribute(String json) {
    return json == null ? null : StoredJson.read(json, SHAPE);
  }
}
