package club.emberwell.api.json;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.MapperFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.cfg.CoercionAction;
import com.fasterxml.jackson.databind.cfg.CoercionInputShape;
import com.fasterxml.jackson.databind.type.LogicalType;
import io.quarkus.jackson.ObjectMapperCustomizer;
import jakarta.inject.Singleton;

/**
 * Takes JSON at its word: a number is no text, a field is there once, nothing follows the end. What
 * may be missing is left out of answers, so that a number is never null.
 */
@Singleton
class StrictJson implements ObjectMapperCustomizer {
  @Override
  @SuppressWarnings("deprecation") // the builder that replaces it is not what Quarkus hands out
  public void customize(ObjectMapper json) {
    json.setSerializationInclusion(JsonInclude.Include.NON_NULL);
    json.enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES);
    json.enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS);
    json.enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES);
    json.enable(DeserializationFeature.FAIL_ON_NUMBERS_FOR_ENUMS);
    json.disable(DeserializationFeature.ACCEPT_FLOAT_AS_INT);
    json.enable(JsonParser.Feature.STRICT_DUPLICATE_DETECTION);
    json.configure(MapperFeature.ALLOW_COERCION_OF_SCALARS, false);
    json.coercionConfigFor(LogicalType.Textual)
        .setCoercion(CoercionInputShape.Integer, CoercionAction.Fail)
        .setCoercion(CoercionInputShape.Float, CoercionAction.Fail)
        .setCoercion(CoercionInputShape.Boolean, CoercionAction.Fail);
  }
}
