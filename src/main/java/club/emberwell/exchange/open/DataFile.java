package club.emberwell.exchange.open;

import java.util.Map;

/**
 * A file that can be taken along.
 *
 * @param bytes its size
 * @param sha256 its sum, in hexadecimal digits
 */
public record DataFile(String name, long bytes, String sha256) {
  private static final String TEXT = "text/plain;charset=UTF-8";

  /** Content types by the end of the name; IANA's register of media types, but for NDJSON. */
  private static final Map<String, String> CONTENT_TYPES =
      Map.of(
          "zip", "application/zip",
          "csv", "text/csv;charset=UTF-8;header=present",
          "ndjson", "application/x-ndjson",
          "jsonld", "application/ld+json",
          "json", "application/json",
          "pem", "application/x-pem-file",
          "sig", "application/octet-stream");

  /** The end of its name. */
  String format() {
    return name.substring(name.lastIndexOf('.') + 1);
  }

  /** Its media type with parameters. */
  public String contentType() {
    return CONTENT_TYPES.getOrDefault(format(), TEXT);
  }

  /** Its media type alone. */
  String mediaType() {
    return contentType().replaceFirst(";.*", "");
  }
}
