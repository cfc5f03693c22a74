package club.emberwell.keep;

import com.fasterxml.jackson.annotation.JsonIgnoreProperties;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.datatype.jsr310.JavaTimeModule;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;

/**
 * What an archive says of itself, as {@value #NAME} in it.
 *
 * @param format how archives are laid out; a program reads this one and all before it
 * @param made by what, and of what
 * @param at when its snapshot was taken
 * @param files of the home
 */
@JsonIgnoreProperties(ignoreUnknown = true)
public record Manifest(
    int format,
    Made made,
    Instant at,
    List<Table> tables,
    List<Sequence> sequences,
    List<HomeFile> files) {
  /** What is written today. */
  public static final int FORMAT = 1;

  /** Its place in the archive. */
  static final String NAME = "manifest.json";

  private static final ObjectMapper JSON =
      JsonMapper.builder()
          .addModule(new JavaTimeModule())
          .disable(SerializationFeature.WRITE_DATES_AS_TIMESTAMPS)
          .enable(SerializationFeature.INDENT_OUTPUT)
          .build();

  /**
   * Where an archive comes from.
   *
   * @param program the version of the program that wrote it
   * @param schema the newest migration of its tables
   * @param club what the club was called
   * @param postgresql the version of the database server
   * @param cause why it was made, by its code; null in archives of before this was said
   */
  @JsonIgnoreProperties(ignoreUnknown = true)
  @JsonInclude(JsonInclude.Include.NON_NULL)
  public record Made(String program, int schema, String club, String postgresql, String cause) {}

  /**
   * The rows of a table, in the text format of COPY, in the order of its primary key.
   *
   * @param columns those that are no function of others
   * @param sha256 of the member, so of the rows
   */
  @JsonIgnoreProperties(ignoreUnknown = true)
  public record Table(String name, List<String> columns, long rows, long bytes, String sha256) {
    /** Its place in the archive. */
    String member() {
      return "tables/" + name + ".copy";
    }
  }

  /**
   * Where a sequence stood.
   *
   * @param called whether that number was given out
   */
  @JsonIgnoreProperties(ignoreUnknown = true)
  public record Sequence(String name, long value, boolean called) {}

  /** A file of the home. */
  @JsonIgnoreProperties(ignoreUnknown = true)
  public record HomeFile(String name, long bytes, String sha256) {
    /** Its place in the archive. */
    String member() {
      return "home/" + name;
    }
  }

  /** Rows of all tables. */
  public long rows() {
    return tables.stream().mapToLong(Table::rows).sum();
  }

  byte[] toBytes() {
    try {
      return (JSON.writeValueAsString(this) + "\n").getBytes(StandardCharsets.UTF_8);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Only the format, which tells whether the rest can be understood. */
  static int formatOf(byte[] bytes) throws IOException {
    return JSON.readTree(bytes).path("format").asInt();
  }

  static Manifest of(byte[] bytes) throws IOException {
    return JSON.readValue(bytes, Manifest.class);
  }
}
