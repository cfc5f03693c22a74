package club.emberwell.remark;

import java.util.List;

/**
 * Something noticed while reading an entry.
 *
 * @param id stable, lower-case with dashes, e.g. {@code unit-missing}; stored and never renamed
 * @param severity what it means for the entry
 * @param field JSON pointer of the field it touches, e.g. {@code /settings/speed}; empty = the
 *     whole
 * @param detail one sentence for a person
 * @param readings what an ambiguous text could have meant, each itself accepted when typed; or
 *     empty
 */
public record Remark(
    String id, Severity severity, String field, String detail, List<String> readings) {
  public Remark {
    readings = List.copyOf(readings);
  }

  public static Remark error(String id, String field, String detail) {
    return new Remark(id, Severity.ERROR, field, detail, List.of());
  }

  public static Remark warning(String id, String field, String detail) {
    return new Remark(id, Severity.WARNING, field, detail, List.of());
  }

  public static Remark info(String id, String field, String detail) {
    return new Remark(id, Severity.INFO, field, detail, List.of());
  }

  /**
   * The same remark at another field; the readers of single values do not know where they stand.
   */
  public Remark at(String pointer) {
    return new Remark(id, severity, pointer, detail, readings);
  }

  public boolean isError() {
    return severity == Severity.ERROR;
  }
}
