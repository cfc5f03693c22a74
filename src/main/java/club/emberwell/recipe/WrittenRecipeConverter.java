package club.emberwell.recipe;

import club.emberwell.bench.StoredJson;
import com.fasterxml.jackson.core.type.TypeReference;
import jakarta.persistence.AttributeConverter;
import jakarta.persistence.Converter;

/** Recipes as written, as JSON. */
@Converter
class WrittenRecipeConverter implements AttributeConverter<WrittenRecipe, String> {
  static final TypeReference<WrittenRecipe> SHAPE = new TypeReference<>() {};

  @Override
  public String convertToDatabaseColumn(WrittenRecipe written) {
    return written == null ? null : StoredJson.write(written);
  }

  @Override
  public WrittenRecipe convertToEntityAttribute(String stored) {
    return stored == null ? null : StoredJson.read(stored, SHAPE);
  }
}
