package club.emberwell.exchange.bench;

import com.fasterxml.jackson.annotation.JsonIgnoreProperties;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.JsonProcessingException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * What a copy says of itself, as {@value #NAME} in it.
 *
 * @param format always {@value #FORMAT}
 * @param version of the format; a server reads this one and all before it
 * @param server the version of the program that wrote it
 * @param savedAt RFC 3339, UTC
 * @param member whose bench it is
 * @param files all others in it
 */
@JsonIgnoreProperties(ignoreUnknown = true)
record CopyManifest(
    String format, int version, String server, String savedAt, String member, List<Part> files) {
  static final String NAME = "manifest.json";
  static final String FORMAT = "emberwell-bench";
  static final int VERSION = 1;

  /**
   * A file.
   *
   * @param lines things in it; left out of what is no list
   * @param sha256 of its bytes, hexadecimal
   */
  @JsonIgnoreProperties(ignoreUnknown = true)
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record Part(String name, Integer lines, long bytes, String sha256) {}

  byte[] toBytes() {
    try {
      return (CopyJson.MAPPER.writeValueAsString(this) + "\n").getBytes(StandardCharsets.UTF_8);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }
}
