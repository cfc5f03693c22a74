package club.emberwell.report;

import club.emberwell.bench.StoredJson;
import club.emberwell.remark.Remark;
import com.fasterxml.jackson.core.type.TypeReference;
import jakarta.persistence.AttributeConverter;
import jakarta.persistence.Converter;
import java.util.List;

/** Remarks as JSON in the database. */
@Converter
class RemarksConverter implements AttributeConverter<List<Remark>, String> {
  @Override
  public String convertToDatabaseColumn(List<Remark> remarks) {
    return remarks == null ? null : StoredJson.write(remarks);
  }

  @Override
  public List<Remark> convertToEntityAttribute(String json) {
    return json == null ? null : StoredJson.read(json, new TypeReference<List<Remark>>() {});
  }
}
