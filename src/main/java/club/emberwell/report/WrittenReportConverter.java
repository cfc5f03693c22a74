package club.emberwell.report;

import club.emberwell.bench.StoredJson;
import club.emberwell.report.reading.WrittenReport;
import com.fasterxml.jackson.core.type.TypeReference;
import jakarta.persistence.AttributeConverter;
import jakarta.persistence.Converter;

/** A report as written, as JSON in the database. */
@Converter
class WrittenReportConverter implements AttributeConverter<WrittenReport, String> {
  static final TypeReference<WrittenReport> SHAPE = new TypeReference<>() {};

  @Override
  public String convertToDatabaseColumn(WrittenReport written) {
    return written == null ? null : StoredJson.write(written);
  }

  @Override
  public WrittenReport convertToEntityAttribute(String json) {
    return json == null ? null : StoredJson.read(json, SHAPE);
  }
}
