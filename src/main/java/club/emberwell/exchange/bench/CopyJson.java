package club.emberwell.exchange.bench;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.cfg.JsonNodeFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;

/** JSON as it stands in copies: its own mapper, for files that others wrote. */
final class CopyJson {
  /** Our own words are six deep. */
  private static final int DEPTH = 40;

  /** Characters of one text; the longest notes have a few thousand. */
  private static final int TEXT = 100_000;

  static final JsonMapper MAPPER =
      JsonMapper.builder(
              JsonFactory.builder()
                  .streamReadConstraints(
                      StreamReadConstraints.builder()
                          .maxNestingDepth(DEPTH)
                          .maxStringLength(TEXT)
                          .maxNumberLength(100)
                          .build())
                  .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                  .build())
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
          .disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
          // 0.10 and 0.1 are one number, so that words can be compared
          .enable(JsonNodeFeature.STRIP_TRAILING_BIGDECIMAL_ZEROES)
          .enable(SerializationFeature.INDENT_OUTPUT)
          .build();

  private CopyJson() {}

  /** On one line. */
  static String line(JsonNode json) {
    try {
      return MAPPER.writer().without(SerializationFeature.INDENT_OUTPUT).writeValueAsString(json);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Our own JSON, of the database. */
  static JsonNode ours(String json) {
    try {
      return MAPPER.readTree(json);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }
}
